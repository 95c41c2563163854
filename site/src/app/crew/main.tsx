import '../core/noEval.ts';
import { start } from '../screens/start.tsx';
import { Find } from './Find.tsx';
import { lazyScreen } from '../screens/lazyScreen.tsx';
import { Home } from './Home.tsx';

start({
  area: 'crew',
  screens: {
    '': Home,
    find: Find,
    hydrant: lazyScreen(async () => (await import('./HydrantScreen.tsx')).HydrantScreen),
    strike: lazyScreen(async () => (await import('./StrikeScreen.tsx')).StrikeScreen),
    stock: lazyScreen(async () => (await import('../screens/stock/StockScreen.tsx')).StockScreen),
    // Printed before a truck leaves: nothing that a phone at the curb has to carry.
    sheet: lazyScreen(async () => (await import('../sheet/SheetScreen.tsx')).SheetScreen),
  },
  // Clerks may add a party at the curb's screens; forms they may not write are not offered to them.
  allowed: (roles) => roles.length > 0,
});
