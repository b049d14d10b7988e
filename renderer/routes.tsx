import {
  CalendarRange,
  ClipboardList,
  Factory,
  Gauge,
  Layers,
  Scissors,
  SlidersHorizontal,
  TrendingUp,
  Wrench,
  type LucideIcon,
} from 'lucide-react';
import { lazy, type ReactNode } from 'react';
import type { Place } from './router.ts';
import { KIND_WORDS, kindAt } from './screens/import/kinds.ts';
import { BoardScreen } from './screens/board/board-screen.tsx';

// A start shows the board, which therefore comes with the page; the other screens when they are opened.

const OrdersView = lazy(async () => ({
  default: (await import('./screens/orders/orders-screen.tsx')).OrdersScreen,
}));
const ImportView = lazy(async () => ({
  default: (await import('./screens/import/import-screen.tsx')).ImportScreen,
}));
const ArchiveView = lazy(async () => ({
  default: (await import('./screens/orders/archive/archive-screen.tsx')).ArchiveScreen,
}));
const FloorView = lazy(async () => ({
  default: (await import('./screens/floor/floor-screen.tsx')).FloorScreen,
}));
const LearningView = lazy(async () => ({
  default: (await import('./screens/learning/learning-screen.tsx')).LearningScreen,
}));
const CuttingView = lazy(async () => ({
  default: (await import('./screens/cutting/cutting-screen.tsx')).CuttingScreen,
}));
const StockView = lazy(async () => ({
  default: (await import('./screens/stock/stock-screen.tsx')).StockScreen,
}));
const LoadView = lazy(async () => ({ default: (await import('./screens/load/load-screen.tsx')).LoadScreen }));
const ShopView = lazy(async () => ({ default: (await import('./screens/shop/shop-screen.tsx')).ShopScreen }));
const SetUpView = lazy(async () => ({
  default: (await import('./screens/set-up/set-up-screen.tsx')).SetUpScreen,
}));
const SettingsView = lazy(async () => ({
  default: (await import('./screens/settings/settings-screen.tsx')).SettingsScreen,
}));
const PrintView = lazy(async () => ({
  default: (await import('./screens/print/print-screen.tsx')).PrintScreen,
}));

const StockPrintView = lazy(async () => ({
  default: (await import('./screens/print/stock-print-screen.tsx')).StockPrintScreen,
}));
const PartPrintView = lazy(async () => ({
  default: (await import('./screens/print/part-print-screen.tsx')).PartPrintScreen,
}));
/** Papers about parts. */
const partPapers = new Set(['part', 'traveller']);
/** Papers about sheets rather than machines. */
const stockPapers = new Set(['cutting', 'purchases']);

interface Screen {
  /** First part of the address, "#/orders". */
  readonly path: string;
  readonly label: string;
  readonly icon: LucideIcon;
  readonly view: ReactNode;
}

/** The screens of the navigation, in its order: key 1 opens the first. */
export const screens: readonly Screen[] = [
  { path: 'board', label: 'Board', icon: CalendarRange, view: <BoardScreen /> },
  { path: 'orders', label: 'Orders', icon: ClipboardList, view: <OrdersView /> },
  { path: 'cutting', label: 'Cutting', icon: Scissors, view: <CuttingView /> },
  { path: 'stock', label: 'Stock', icon: Layers, view: <StockView /> },
  { path: 'floor', label: 'Floor', icon: Wrench, view: <FloorView /> },
  { path: 'load', label: 'Load', icon: Gauge, view: <LoadView /> },
  { path: 'shop', label: 'Shop', icon: Factory, view: <ShopView /> },
  { path: 'learning', label: 'Learning', icon: TrendingUp, view: <LearningView /> },
  { path: 'settings', label: 'Settings', icon: SlidersHorizontal, view: <SettingsView /> },
];

/** Paper has no navigation around it. */
export const isPrint = ({ path }: Place): boolean => path[0] === 'print';

/** The screen of the navigation that a place belongs to; a file's import to the one that shows what it holds, deliveries to stock. */
export function screenAt(place: Place): Screen | undefined {
  const [own] = place.path[0] === 'import' ? KIND_WORDS[kindAt(place)].home : place.path;
  const first = own === 'deliveries' ? 'stock' : own;
  return screens.find((screen) => screen.path === first);
}

/** The view for an address; the board when it names nothing we have. Deeper parts are the screen's own (`usePlace`). */
export function viewAt(place: Place): ReactNode {
  if (isPrint(place)) return paperAt(place.path[1] ?? '');
  if (place.path[0] === 'import') return <ImportView />;
  if (place.path[0] === 'orders' && place.path[1] === 'archive') return <ArchiveView />;
  if (place.path[0] === 'shop' && place.path[1] === 'set-up') return <SetUpView />;
  return screenAt(place)?.view ?? <BoardScreen />;
}

function paperAt(paper: string): ReactNode {
  if (partPapers.has(paper)) return <PartPrintView />;
  return stockPapers.has(paper) ? <StockPrintView /> : <PrintView />;
}
