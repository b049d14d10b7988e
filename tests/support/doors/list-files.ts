import type { ImportKindName } from '../../../core/import/kinds.ts';
import type { RowKind } from '../../../core/shop/state.ts';
import { finishedFile, ordersFile } from './files.ts';

/** A whole file of a kind for the small shop, and where what is taken of it is found. */
interface TableFile {
  readonly text: string;
  /** Where a new row of the file is a row; null: several are one. */
  readonly table: RowKind | null;
  readonly history: 'step' | 'fact';
}

export const tableFiles: Readonly<Record<ImportKindName, TableFile>> = {
  orders: { text: ordersFile, table: 'line', history: 'step' },
  finished: { text: finishedFile, table: 'record', history: 'fact' },
  parts: {
    text: [
      'part,description,shape,length,note',
      'corner,Corner,in: 4; 90 up; 4,10 ft,',
      'RC 120/60,Ridge cap,in: hem 1/2 closed up; 4 3/4; 30 down r 1/16; 4 3/4; hem 1/2 closed up,126,"wide, painted"',
      'K-1,Kantprofil,"mm: 60,5 | 90 up | 40; paint down","2,5 m",',
      'eave,Eave,4; 90 sideways; 2,10 ft,',
    ].join('\n'),
    table: 'part',
    history: 'step',
  },
  materials: {
    text: [
      'metal,family,gauge,thickness (in)',
      'galv,,24,0.03',
      'galv,galvanized,22 ga,',
      'Edelstahl,,0.8 mm,',
      'Aluminum sheet,,.040,',
      'Oddium,steel,7,1/4',
    ].join('\n'),
    table: null,
    history: 'step',
  },
  colours: {
    text: ['code,colour,hex', 'moss,Moosgrün,#4A5D43', 'RAL 7016,Anthracite,', ',White,f1f0ea'].join('\n'),
    table: 'colour',
    history: 'step',
  },
  sheets: {
    text: [
      'material,gauge,colour,width,length,trim,price',
      'galv,24,moss,48,10 ft,0,65.5',
      'galv,26,Bone white,48,120,1/4,"1,080"',
      'galv,#24,puce,48 in,3657.6 mm,,',
    ].join('\n'),
    table: 'sheet',
    history: 'step',
  },
  stock: {
    text: [
      'code,material,gauge,colour,width,length,on hand',
      // The small shop has an entry for the next change of galv-24-moss already.
      ',galv,24,bone,48,10 ft,"1,200"',
      'galv-26-moss,,,,,,38 pcs',
      'nothing,,,,,,5',
    ].join('\n'),
    table: 'movement',
    history: 'fact',
  },
  machines: {
    text: [
      'code,name,stage,length,thickness,tonnes,v,calendar',
      'B1,Brake,brake,,,80,,',
      'AP/2,Abkantpresse 2,Abkantpresse,4 m,2 mm,130,"10,5 mm",Day shift',
      'S9,Shear,guillotine,10 ft,0.06,,,day',
    ].join('\n'),
    table: 'machine',
    history: 'step',
  },
  tools: {
    text: [
      'code,name,kind,v,angle,length,rating (t/m),fits,note',
      'V8,"Die, V 8",die,8 mm,85,3050 mm,"1,000",B1,',
      'P/1,Stempel 85,Stempel,,85,10 ft,,B1,"left, on the rack"',
      'H1,Hemming tools,hemming,,,3 m,60,B1,',
    ].join('\n'),
    table: 'tool',
    history: 'step',
  },
};

export const tableKinds = Object.keys(tableFiles) as ImportKindName[];
