import { join } from 'node:path';
import { runAll } from '../testing/runAll.ts';
import { stopAll } from '../testing/runStep.ts';
import { phases } from '../testing/steps.ts';

/**
 * `npm test`: types, lint, rooms, site build, CDK synth, every test. A failing step does not stop the others. Ends
 * with the line `N passed, N failed`; exit 0 only when none failed. Logs stay in `out/test/`.
 */
const root = join(import.meta.dirname, '..', '..', '..');

for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const)
  process.once(signal, () => {
    stopAll();
    process.exit(130);
  });

const results = await runAll({
  phases,
  folder: join(root, 'out', 'test'),
  root,
  print: (line) => process.stdout.write(`${line}\n`),
});
process.exitCode = results.length > 0 && results.every(({ counts }) => counts.failed === 0) ? 0 : 1;
