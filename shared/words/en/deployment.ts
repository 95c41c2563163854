/** English words: deploying, the commands that speak to a deployment. */
export const deployment = {
  'problem.public-url-not-domain': 'A domain is set, so this is its address: {url}',
  'problem.rely-too-short':
    'Give more than twice the interval, {least} minutes or more, so that one publication that fails does no harm.',
  'problem.stage-name': 'Use small letters and digits, a letter first, no more than 12.',
  'problem.domain-prefix':
    'Use 4 to 52 small letters, digits and hyphens; a letter first, and no hyphen last.',
  'problem.host-name': 'Give a name in small letters without https://, like hydrants.water.example.',
  'problem.certificate-arn':
    'Give the ARN of a certificate in us-east-1: arn:aws:acm:us-east-1:ACCOUNT:certificate/ID.',
  'problem.hosted-zone-id': 'Give the id of the hosted zone: a Z, then capital letters and digits.',
  'command.deployment-address':
    '"{address}" is no address of a deployment. Give it with https://, like https://hydrants.example.',
  'command.deployment-silent':
    '{address} does not answer as this program does. Is the address right, and is it deployed?',
  'command.no-sign-in-page': '{address} has no sign-in page. Set DEPLOYMENT_TOKEN to a token that it takes.',
  'command.not-signed-in':
    'Nobody has signed in at {address} on this machine, or the sign-in has run out. Run: npm run sign-in -- {address}',
  'command.sign-in-refused':
    '{address} did not confirm the sign-in. Run it again; a manager can see in the list of people whether you are there.',
  'command.sign-in-waited': 'Nobody came back from the sign-in page within {minutes} minutes. Run it again.',
  'command.sign-in-usage': 'Give one address: npm run sign-in -- https://hydrants.example',
  'command.sign-in-open': 'Open this in a browser on this machine and sign in:\n{address}',
  'command.sign-in-done-browser': 'Signed in. This window can be closed.',
  'command.sign-in-done':
    'Signed in at {address}. It is kept in {file}, which only you can read; delete that file to sign out.',
  'command.deployment-url-too':
    '{name} is set and DEPLOYMENT_URL is not. Set both to load into a deployment, or neither for this machine.',
  'command.deployment-variable': 'Set {name} as well: the stack of the data says it among its outputs.',
  'smoke.page': 'the public page answers',
  'smoke.headers': 'its headers are the strict ones',
  'smoke.health': 'health: the arithmetic, the store and the page are good',
  'smoke.utility': 'the utility’s own facts are read',
  'smoke.closed': 'nobody reads the desk without a sign-in',
  'smoke.manager': 'this sign-in is a manager’s',
  'smoke.taken': 'a trial report is taken',
  'smoke.once': 'sent again it is the same one, and another under its id is refused',
  'smoke.photo': 'its photo arrives',
  'smoke.apart': 'the trial is on no list, no page and in no message',
  'smoke.line':
    '{state, select, ok {ok     } other {FAILED }}{what}{found, select, none {} other {: {found}}}',
  'smoke.well': '{address} is well.',
  'smoke.not-well': '{address} is not well: see the lines marked FAILED.',
  'smoke.open-only':
    'Nobody is signed in at {address}, so only what anybody may see was looked at. For the rest: npm run sign-in -- {address}',
  'smoke.usage':
    'Give one address: npm run smoke -- https://hydrants.example. With the sign-in of a manager (npm run sign-in, or a token in DEPLOYMENT_TOKEN) it also hands in trials.',
} as const;
