import '../core/noEval.ts';
import { start } from '../screens/start.tsx';
import { CaseFile } from './CaseFile.tsx';
import { ClaimScreen } from './ClaimScreen.tsx';
import { Rates } from '../rates/Rates.tsx';
import { Home } from './Home.tsx';

start({
  area: 'desk',
  screens: { '': Home, strike: CaseFile, claim: ClaimScreen, rates: Rates },
  allowed: (roles) => roles.includes('clerk') || roles.includes('manager'),
});
