import type { Rng } from '../../../demo-data/make/rng.ts';
import type { Dialect, Language } from './dialect.ts';

/** Column titles as shops and their programs give them; words of the trade in three languages. */

export const FIELDS = [
  'order',
  'line',
  'customer',
  'part',
  'quantity',
  'gauge',
  'colour',
  'length',
  'release',
  'due',
  'note',
] as const;
export type Field = (typeof FIELDS)[number];

const TITLES: Readonly<Record<Language, Readonly<Record<Field, readonly string[]>>>> = {
  en: {
    order: ['Order', 'Order No', 'Order No.', 'Work Order', 'Job #', 'Job No.', 'WO #', 'Order number'],
    line: ['Line', 'Line No.', 'Pos.'],
    release: ['Not before', 'Start date', 'Earliest start'],
    customer: ['Customer', 'Customer Name', 'Cust Name', 'Client'],
    part: ['Part', 'Part No', 'Part #', 'Item', 'Profile', 'PART NO'],
    quantity: ['Qty', 'Quantity', 'Pcs', 'Qty Ord', 'Pieces', 'QTY ORDERED'],
    gauge: ['Gauge', 'Ga', 'Ga.', 'Thickness'],
    colour: ['Colour', 'Color', 'Finish'],
    length: ['Length', 'Len', 'Cut length', 'LENGTH'],
    due: ['Due', 'Due date', 'Ship By', 'Required', 'Need by', 'Delivery date', 'Due Dt'],
    note: ['Note', 'Notes', 'Comments', 'Remarks'],
  },
  de: {
    order: ['Auftrag', 'Auftrags-Nr.', 'Auftragsnummer', 'Auftrag Nr.', 'Auftragsnr'],
    line: ['Pos.', 'Position', 'Zeile'],
    release: ['Starttermin', 'Frühester Beginn'],
    customer: ['Kunde', 'Kundenname', 'Auftraggeber'],
    part: ['Teil', 'Artikel', 'Artikel-Nr.', 'Profil', 'Teilenummer'],
    quantity: ['Menge', 'Stück', 'Anzahl', 'Stk.', 'Stückzahl'],
    gauge: ['Dicke', 'Stärke', 'Blechdicke', 'Blechstärke'],
    colour: ['Farbe', 'Farbton', 'FARBE'],
    length: ['Länge', 'LÄNGE', 'Zuschnittlänge'],
    due: ['Termin', 'Liefertermin', 'Lieferdatum', 'Fällig', 'Fällig am', 'Liefern bis'],
    note: ['Bemerkung', 'Notiz', 'Hinweis', 'Bemerkungen'],
  },
  fr: {
    order: ['Commande', 'N° commande', 'No de commande', 'Numéro de commande'],
    line: ['Ligne', 'Poste', 'N° ligne'],
    release: ['Date de début', 'Pas avant'],
    customer: ['Client', 'Nom du client'],
    part: ['Pièce', 'Article', 'Référence', 'Profilé'],
    quantity: ['Quantité', 'Qté', 'Nombre', 'Nb pièces'],
    gauge: ['Épaisseur', 'Ép.', 'Epaisseur'],
    colour: ['Couleur', 'Teinte', 'Coloris'],
    length: ['Longueur', 'LONGUEUR', 'Long.'],
    due: ['Échéance', 'Date de livraison', 'Livraison', 'Délai', 'À livrer le'],
    note: ['Remarque', 'Observations', 'Commentaire'],
  },
};

/** Columns of other things, whose titles or figures could be taken for one of ours. */
export const BYSTANDERS = [
  'orderDate',
  'customerNumber',
  'description',
  'price',
  'total',
  'weight',
  'clerk',
  'width',
  'printed',
  'shipped',
  'totalLength',
  'backColour',
] as const;
export type Bystander = (typeof BYSTANDERS)[number];

const OTHERS: Readonly<Record<Language, Readonly<Record<Bystander, string>>>> = {
  en: {
    orderDate: 'Order date',
    customerNumber: 'Cust. no.',
    description: 'Part description',
    price: 'Unit price',
    total: 'Line total',
    weight: 'Weight (lb)',
    clerk: 'Entered by',
    width: 'Coil width',
    printed: 'Print date',
    shipped: 'Qty shipped',
    totalLength: 'Total length',
    backColour: 'Back colour',
  },
  de: {
    orderDate: 'Auftragsdatum',
    customerNumber: 'Kunden-Nr.',
    description: 'Artikelbezeichnung',
    price: 'Einzelpreis',
    total: 'Gesamtpreis',
    weight: 'Gewicht (kg)',
    clerk: 'Sachbearbeiter',
    width: 'Bandbreite',
    printed: 'Druckdatum',
    shipped: 'Gelieferte Menge',
    totalLength: 'Gesamtlänge',
    backColour: 'Farbe Rückseite',
  },
  fr: {
    orderDate: 'Date de commande',
    customerNumber: 'N° client',
    description: 'Désignation',
    price: 'Prix unitaire',
    total: 'Montant',
    weight: 'Poids (kg)',
    clerk: 'Saisi par',
    width: 'Largeur de bande',
    printed: "Date d'impression",
    shipped: 'Quantité livrée',
    totalLength: 'Longueur totale',
    backColour: 'Couleur verso',
  },
};

const UNIT_WORDS: Readonly<Record<string, readonly string[]>> = {
  mm: ['mm', 'MM'],
  cm: ['cm'],
  m: ['m'],
  in: ['in', 'inches', 'in.'],
  ft: ['ft', 'feet'],
};

function withUnit(rng: Rng, title: string, { length, language }: Dialect): string {
  const unit = rng.pick(UNIT_WORDS[length.unit]!);
  const forms = [`${title} (${unit})`, `${title} [${unit}]`, `${title}, ${unit}`, `${title} in ${unit}`];
  return language === 'fr' ? rng.pick([...forms.slice(0, 3), `${title} en ${unit}`]) : rng.pick(forms);
}

export function drawHeading(rng: Rng, dialect: Dialect, column: Field | Bystander): string {
  const { language } = dialect;
  if (column in OTHERS.en) return OTHERS[language][column as Bystander];
  const title = rng.pick(TITLES[language][column as Field]);
  if (column === 'gauge' && dialect.thickness === 'mm in heading') return `${title} (mm)`;
  return column === 'length' && dialect.length.unitIn === 'heading' ? withUnit(rng, title, dialect) : title;
}

export const TOTALS: Readonly<Record<Language, readonly string[]>> = {
  en: ['Total', 'TOTAL', 'Totals', 'Sum', 'Grand total'],
  de: ['Summe', 'Gesamt', 'SUMME'],
  fr: ['Total', 'Somme', 'Total général'],
};

export const SUBTOTALS: Readonly<Record<Language, string>> = {
  en: 'Subtotal',
  de: 'Zwischensumme',
  fr: 'Sous-total',
};

/** What a program prints at the end of each page. */
export const PAGE_FEET: Readonly<Record<Language, string>> = {
  en: 'Page 1 of 3',
  de: 'Seite 1/3',
  fr: 'Page 1 sur 3',
};

export const SHEET_TITLES: Readonly<Record<Language, readonly string[]>> = {
  en: ['Work orders, weeks 49 to 51', 'Open orders'],
  de: ['Auftragsliste KW 49 bis 51', 'Offene Aufträge'],
  fr: ['Commandes en cours', 'Liste des commandes, semaines 49 à 51'],
};
