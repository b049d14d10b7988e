import { listed, WORDS } from './vocabulary.ts';

/**
 * What columns are called in files of a shop's own lists (parts, metals, colours, sheet sizes, stock, machines, tools), where
 * `WORDS` has no word for the field or another; as there, a word stands for one field of a kind only.
 */
export const LIST_WORDS = {
  code: listed(
    'code, id, no, nr, number, short name, kurzel, kurzzeichen, kennung, nummer, reference, ref, numero',
    'codigo, clave',
  ),
  name: listed(
    'name, description, title, bezeichnung, benennung, beschreibung, designation, nom, libelle, nombre',
    'denominacion, descripcion',
  ),
  partCode: listed(
    'code, part, part code, part no, part nr, part number, profile no, profile nr, profile code, item',
    'item code, item no, id, teil, teile nr, teilenummer, teilenr, artikel, artikel nr, artikelnummer',
    'profil nr, profilnummer, piece, ref piece, code article, article, reference, ref, pieza, codigo',
    'referencia, articulo',
  ),
  partName: listed(
    'name, part name, description, title, bezeichnung, benennung, profil, profilname, designation, nom',
    'libelle, nombre, denominacion, descripcion, perfil',
  ),
  profile: listed(
    'profile, shape, notation, cross section, section, bends, querschnitt, kantprofil, abkantung, form',
    'forme, coupe, section profil, seccion, forma',
  ),
  pieceLength: listed('usual length, standard length, standardlange, longueur standard, largo estandar'),
  metal: listed('metal', ...WORDS.material, 'name, bezeichnung, designation, nom, nombre'),
  family: listed(
    'family, metal family, kind, type, group, werkstoffgruppe, gruppe, art, famille, famille metal',
    'familia, tipo',
  ),
  gauge: listed('gauge, ga, gage, gauges, label, blechlehre, lehre, jauge, calibre'),
  thickness: listed(
    'thickness, thk, nominal thickness, decimal, blechdicke, dicke, starke, staerke, blechstarke',
    'materialstarke, nennstarke, nenndicke, epaisseur, ep, espesor, esp, grosor',
  ),
  colourCode: listed(
    'code, colour code, color code, ral, id, no, nr, number, farbcode, farbnummer, farb nr, code couleur',
    'code teinte, codigo, codigo color',
  ),
  colourName: listed(
    'name, colour, color, colour name, color name, finish, farbe, farbton, farbname, bezeichnung',
    'couleur, coloris, teinte, nom, acabado, nombre, description',
  ),
  swatch: listed('swatch, hex, screen colour, screen color, rgb, html, hexcode, farbwert, hexadecimal'),
  width: listed('width, sheet width, coil width, w, wd, breite, tafelbreite, largeur, larg, ancho'),
  sheetLength: listed(
    'sheet length, length, len, l, lg, lange, laenge, tafellange, longueur, long, largo, longitud',
  ),
  trim: listed('trim, edge trim, besaumung, randbeschnitt, affranchissement, recorte'),
  price: listed(
    'price, unit price, cost, sheet price, price each, preis, einzelpreis, stuckpreis, tafelpreis, prix',
    'prix unitaire, cout, precio, precio unitario, coste',
  ),
  lot: listed(
    'lot, dye lot, lot no, lot nr, lot number, batch, batch no, charge, chargen nr, charge nr, partie, lote',
  ),
  paintSystem: listed(
    'paint system, coating system, resin, lacksystem, beschichtungssystem, beschichtung, systeme de peinture',
    'revetement, sistema de pintura, revestimiento',
  ),
  film: listed('film, protective film, strippable film, folie, schutzfolie, film de protection, pelicula'),
  count: listed(
    'count, counted, on hand, in stock, stock, qty, qty on hand, quantity, sheets, pieces, pcs, bestand',
    'istbestand, gezahlt, menge, anzahl, stuck, lagerbestand, compte, en stock, quantite, qte, existencias',
    'cantidad, contado, conteo',
  ),
  machineName: listed(
    'name, machine, machine name, description, maschine, maschinenname, bezeichnung, nom, maquina, nombre',
  ),
  stage: listed('stage, kind, type, machine type, art, typ, maschinenart, type de machine, tipo'),
  machineLength: listed(
    'length, working length, bending length, shearing length, max length, capacity length, arbeitslange',
    'abkantlange, schnittlange, lange, longueur, longueur utile, longitud util, longitud, largo',
  ),
  machineThickness: listed(
    'thickness, max thickness, capacity, blechdicke, dicke, max dicke, epaisseur, epaisseur max, espesor',
    'espesor max',
  ),
  tonnes: listed('tonnes, force t, metric tonnes, t, presskraft t, presskraft, force, fuerza, kraft'),
  dieOpening: listed(
    'die opening, v, v opening, v die, die, matrizenweite, v weite, gesenkweite, ve, matriz',
  ),
  backGauge: listed(
    'back gauge, back gauge travel, back gage, anschlag, hinteranschlag, anschlagweg, butee, butee arriere',
    'tope, tope trasero',
  ),
  minStrip: listed('narrowest strip, min strip, minimum strip, kleinster streifen, bande min, tira minima'),
  toolName: listed(
    'name, tool, tool name, description, werkzeug, bezeichnung, designation, outil, nom, herramienta, nombre',
  ),
  toolKind: listed('kind, type, tool type, art, typ, werkzeugart, type d outil, tipo'),
  toolAngle: listed('angle, degrees, winkel, grad, angulo'),
  tipRadius: listed(
    'radius, tip radius, nose radius, spitzenradius, stempelradius, rayon, rayon de pointe, radio',
  ),
  gooseneck: listed('gooseneck, goose neck, schwanenhals, col de cygne, cuello de cisne'),
  toolLength: listed(
    'length, len, total length, tool length, lange, laenge, gesamtlange, werkzeuglange, longueur, largo',
    'longitud',
  ),
  ratingKnPerM: listed(
    'rating kn m, rating kn, kn m, kn, load kn m, max kn m, belastung kn m, tragkraft kn m, charge kn m, carga kn m',
  ),
  ratingTPerM: listed('rating t m, t m, load t m, max t m, belastung t m, charge t m, carga t m'),
  ratingTPerFt: listed('rating t ft, t ft, load t ft, max t ft'),
  brakes: listed(
    'brakes, fits, brake, press brakes, machines, machine, abkantpressen, abkantpresse, maschinen, maschine',
    'passt auf, plieuses, presses plieuses, plegadoras, maquinas',
  ),
  people: listed('people, crew, operators, mannschaft, personen, equipe, personnes, personas'),
  calendar: listed(
    'calendar, hours, shift, shifts, kalender, schicht, arbeitszeit, calendrier, horaire, horario',
    'calendario, turno',
  ),
} as const satisfies Readonly<Record<string, readonly string[]>>;
