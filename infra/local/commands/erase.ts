import { v7 } from 'uuid';
import { erase, eraseAgain, lookAt, type EraseDeps } from '../../../functions/erasures/erase.ts';
import { logLine } from '../../../functions/log/log.ts';
import { projectStream } from '../../../functions/project/project.ts';
import { MOST_ERASED } from '../../../shared/submissions/forms/erasure.ts';
import { say } from '../../../shared/words/index.ts';
import { accountName } from '../account.ts';
import { readEraseOptions } from '../eraseOptions.ts';
import { openOperatorStores } from '../operatorStores.ts';
import { RefusedStart } from '../refusedStart.ts';
import { askedLocale, command, tell, terminalLocale } from '../terminal.ts';

/** `npm run erase -- strike:ID …`: says what personal fields a record holds, and with `--write` erases them. */
await command(async () => {
  const argv = process.argv.slice(2);
  const options = readEraseOptions(argv);
  if (options === 'help') {
    console.log(say(askedLocale(argv), 'erase.help'));
    return;
  }
  const { stream, only, write, body } = options;
  const opened = await openOperatorStores(process.env);
  try {
    const { ledger, unique } = opened.stores;
    const { erasable, holds } = await lookAt({ ledger }, stream);
    const chosen = erasable.filter(({ submissionId }) => only.length === 0 || only.includes(submissionId));
    const absent = only.filter((id) => !chosen.some(({ submissionId }) => submissionId === id));
    if (absent.length > 0) throw new RefusedStart('erase.not-there', { ids: absent.join(', '), stream });
    for (const { submissionId, kind, paths } of chosen)
      tell('erase.would', {
        submissionId,
        kind: say(terminalLocale(), `kind.${kind}`),
        paths: paths.join(', '),
      });
    if (chosen.length === 0) {
      tell('erase.nothing', { stream });
      return;
    }
    if (holds.length > 0) throw new RefusedStart('erase.on-hold', { claims: holds.join(', ') });
    if (!write) {
      tell('erase.not-yet', { count: chosen.length });
      return;
    }

    const deps: EraseDeps = {
      ledger,
      unique,
      log: logLine,
      erasures: (await opened.evidence()).erasures,
      afterAppend: ({ stream: of }) => projectStream(opened.projector, of),
    };
    await eraseAgain(deps);
    const targetIds = chosen.map(({ submissionId }) => submissionId);
    for (let from = 0; from < targetIds.length; from += MOST_ERASED)
      await erase(deps, {
        stream,
        body: { ...body, targetIds: targetIds.slice(from, from + MOST_ERASED) },
        submissionId: v7(),
        at: new Date().toISOString(),
        personId: accountName().trim().slice(0, 64),
      });
    tell('erase.done', { count: chosen.length });
  } finally {
    await opened.close(false);
  }
});
