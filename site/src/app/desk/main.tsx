import '../core/noEval.ts';
import { start } from '../screens/start.tsx';
import { CaseFile } from './CaseFile.tsx';
import { ClaimScreen } from './ClaimScreen.tsx';
import { Figures } from '../figures/Figures.tsx';
import { Rates } from '../rates/Rates.tsx';
import { lazyScreen } from '../screens/lazyScreen.tsx';
import { Home } from './Home.tsx';

start({
  area: 'desk',
  screens: {
    '': Home,
    strike: CaseFile,
    claim: ClaimScreen,
    figures: Figures,
    rates: Rates,
    stock: lazyScreen(async () => (await import('../screens/stock/StockScreen.tsx')).StockScreen),
  },
  allowed: (roles) => roles.includes('clerk') || roles.includes('manager'),
});
