/**
 * From an empty shop to a printed dispatch list of its own orders, step by step. The one text of it: the app's help shows
 * it, and README has it word for word, which a test holds (tests/core/report/first-minutes.test.ts).
 */

export const FIRST_MINUTES = 'Your first fifteen minutes';

type Place = 'shop' | 'machines' | 'metals' | 'sheets' | 'parts' | 'orders' | 'board' | 'print';

export interface FirstStep {
  /** Where in the app it is done. */
  readonly at: Place;
  readonly title: string;
  /** Whole sentences. Words of buttons and screens stand between asterisks. */
  readonly says: string;
}

export const FIRST_STEPS: readonly FirstStep[] = [
  {
    at: 'shop',
    title: 'Name the shop',
    says: 'Type its name on the first page and press *Set up your shop*. Units, time zone and decimal mark are taken from this computer; correct what differs. Five steps follow. Each can be left for later, and beside them stands what is still missing to plan, often with one press that mends it.',
  },
  {
    at: 'machines',
    title: 'Machines',
    says: 'Press *Add a shear and a press brake with usual figures*, then read yours off the machine’s plate: longest piece, thickest sheet, force, die opening, back gauge. A figure too high plans work that the machine cannot do.',
  },
  {
    at: 'metals',
    title: 'Metals and colours',
    says: 'Tick the gauges and colours that you buy; type more colours with commas between them. Use your own names: what a customer’s list calls them is asked once, and remembered.',
  },
  {
    at: 'sheets',
    title: 'Sheet sizes',
    says: 'Tick the sizes that you keep, or give one size to every metal, gauge and colour by one press. What lies in stock can wait.',
  },
  {
    at: 'parts',
    title: 'Parts',
    says: 'A part is a code with its cross-section. Draw those that your orders name (*Draw a part*), or bring all of them with *Parts from a file*.',
  },
  {
    at: 'orders',
    title: 'Orders, from the file that you have',
    says: 'Save your list as CSV or as a spreadsheet (.xlsx), whatever its headings, and drop it on the window or press *Work orders from a file*; or copy its rows and paste them on *Orders*. What can mean two things is asked, once for a column; a name that the shop does not know, once for the file. Wrong cells stand first and are typed again on the spot. Look at how the rows are read, then import them: one step, which undo takes back.',
  },
  {
    at: 'board',
    title: 'Plan the week',
    says: 'Press *Plan the week*. Every machine’s queue stands on the *Board* in an order that meets the due dates with few changeovers; what gets late is named, and *Why late?* says where its time goes. Drag a bar where you know better.',
  },
  {
    at: 'print',
    title: 'Print the dispatch lists',
    says: 'One for each machine, with what to change over before each run and the cautions that belong on it. Check its first line against the machine before the first cut.',
  },
];
