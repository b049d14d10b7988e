export const listed = (...texts: readonly string[]): readonly string[] =>
  texts.flatMap((text) => text.split(', '));

/**
 * What columns are called where files come from: English, German, French and Spanish words of the trade and of trade in
 * general (common practice, no source), as `plainWords` writes them, the likeliest first. A word stands for one field of
 * a kind only; a test holds that.
 */
export const WORDS = {
  order: listed(
    'order, work order, job, order no, order nr, order number, work order no, work order number',
    'job no, job number, job nr, wo, w o, wo no, wo nr, sales order, auftrag, auftrags nr, auftragsnr',
    'auftragsnummer, auftrag nr, bestellung, bestellnummer, bestell nr, werkauftrag',
    'fertigungsauftrag, commande, n commande, no commande, numero de commande, n de commande',
    'no de commande, num commande, ordre de fabrication, of, pedido, orden, n pedido, no pedido',
    'numero de pedido, n de pedido, orden de trabajo, no de pedido',
  ),
  line: listed(
    'line, line no, line nr, line number, item no, pos, position, positions nr, posten, pos nr',
    'auftragsposition, zeile, ligne, n ligne, no ligne, poste, linea, n linea, no linea, posicion',
    'partida, renglon',
  ),
  customer: listed(
    'customer, customer name, cust, cust name, client, sold to, ship to, buyer, kunde, kundenname, auftraggeber',
    'besteller, nom client, nom du client, acheteur, cliente, nombre cliente, nombre del cliente',
    'comprador',
  ),
  part: listed(
    'part, part code, part no, part nr, part number, part name, item, profile, item code, product, trim',
    'shape, teil, teile nr, teilenummer, teilenr, profil, artikel, artikel nr',
    'artikelnummer, artikelnr, bauteil, kantteil, piece, article, reference, ref',
    'ref piece, code article, pieza, perfil, articulo, referencia, codigo, description, bezeichnung, designation, descripcion',
  ),
  quantity: listed(
    'quantity, qty, pieces, pcs, pc, count, no of pieces, order qty, qty ord, ordered, qty ordered, ea, menge, stuck',
    'stueck, stuckzahl, stueckzahl, stk, anzahl, st, quantite, qte, nombre, nb, nb pieces',
    'nombre de pieces, cantidad, cant, piezas, unidades, pzas',
  ),
  'extra pieces': listed('extra pieces, overrun, extra, mehrmenge, uberlieferung, surplus, excedente'),
  material: listed(
    'material, metal, material code, sheet metal, werkstoff, blech, metall, matiere, materiau',
    'metal base, chapa, material base',
  ),
  gauge: listed(
    'gauge, ga, gage, gauges, thickness, thk, blechdicke, dicke, starke, staerke, blechstarke',
    'materialstarke, materialdicke, epaisseur, ep, epais, espesor, esp, calibre, grosor',
  ),
  colour: listed(
    'colour, color, finish, colour code, color code, paint, coating, ral, colour name, color name',
    'farbe, farbton, beschichtung, farbcode, oberflache, couleur, coloris, teinte, finition, acabado',
    'pintura',
  ),
  length: listed(
    'length, len, lgth, piece length, cut length, lange, laenge, teilelange, stucklange',
    'zuschnittlange, longueur, long, lg, longitud, largo',
  ),
  'not before': listed(
    'not before, release, release date, earliest start, start date, material date, fruhester start',
    'fruhestens, starttermin, fruhester beginn, debut au plus tot, date de debut, pas avant',
    'date de lancement, inicio, no antes de, fecha de inicio',
  ),
  due: listed(
    'due, due date, due dt, promised, promise date, delivery date, delivery, required, required by',
    'required date, need by, need date, ship by, ship date, deliver by',
    'wanted, date due, date required, termin, liefertermin, lieferdatum, fallig, fallig am',
    'falligkeit, liefern bis',
    'fertig bis, endtermin, wunschtermin, echeance, livraison, date de livraison, date livraison',
    'a livrer le',
    'delai, date echeance, date d echeance, entrega, fecha de entrega, fecha entrega, vencimiento',
    'plazo',
  ),
  importance: listed(
    'importance, weight, priority, prio, wichtigkeit, prioritat, priorite, prioridad, importancia',
  ),
  rush: listed('rush, urgent, hot, eilt, eilauftrag, dringend, urgente, express'),
  note: listed(
    'note, notes, remark, remarks, comment, comments, instructions, bemerkung, bemerkungen, hinweis',
    'notiz, kommentar, anmerkung, remarque, remarques, commentaire, observations, nota, notas',
    'observaciones, comentario, comentarios',
  ),
  operation: listed('operation, arbeitsgang, vorgang, operacion'),
  machine: listed(
    'machine, work center, workcentre, work centre, maschine, arbeitsplatz, maquina, poste de travail',
  ),
  start: listed('start, started, begin, beginn, debut, comienzo, start time'),
  end: listed('end, finished, ended, ende, fin, end time, fertig'),
  good: listed('good, good pieces, ok pieces, gut, gutmenge, bonnes, buenas'),
  scrapped: listed('scrapped, scrap, rejects, ausschuss, rebut, rebuts, chatarra, rechazo'),
  'estimate s': listed('estimate s, estimate'),
  'changeover s': listed('changeover s, changeover, setup s'),
  who: listed('who, operator, operators, bediener, mitarbeiter, operateur, operador, operario'),
} as const satisfies Readonly<Record<string, readonly string[]>>;

/** How rows of sums begin. */
export const TOTALS: readonly string[] = listed(
  'total, totals, grand total, subtotal, sub total, sum, summe, gesamt, gesamtsumme, zwischensumme, summe gesamt, gesamtmenge, insgesamt, somme, sous total, total general, totaux, suma, total pedido, totales',
);
