import { say } from '../../../shared/words/index.ts';
import { deploymentAddress } from '../deployed/access.ts';
import { signInAt } from '../deployed/signIn.ts';
import { RefusedStart } from '../refusedStart.ts';
import { command, tell, terminalLocale } from '../terminal.ts';

/** `npm run sign-in -- https://hydrants.example`: for the commands that speak to a deployment. */
await command(async () => {
  const [named, ...more] = process.argv.slice(2);
  if (named === '--help') {
    tell('command.sign-in-usage');
    return;
  }
  if (named === undefined || named.startsWith('-') || more.length > 0)
    throw new RefusedStart('command.sign-in-usage');
  const origin = deploymentAddress(named);
  const file = await signInAt(origin, {
    variables: process.env,
    show: (address) => {
      tell('command.sign-in-open', { address });
    },
    done: say(terminalLocale(), 'command.sign-in-done-browser'),
  });
  tell('command.sign-in-done', { address: origin, file });
});
