import '../core/noEval.ts';
import { start } from '../screens/start.tsx';
import { CaseFile } from './CaseFile.tsx';
import { ClaimScreen } from './ClaimScreen.tsx';
import { Figures } from '../figures/Figures.tsx';
import { Rates } from '../rates/Rates.tsx';
import { Home } from './Home.tsx';

start({
  area: 'desk',
  screens: { '': Home, strike: CaseFile, claim: ClaimScreen, figures: Figures, rates: Rates },
  allowed: (roles) => roles.includes('clerk') || roles.includes('manager'),
});
