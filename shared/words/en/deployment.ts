/** English words: deploying, the commands that speak to a deployment. */
export const deployment = {
  'problem.public-url-not-domain': 'A domain is set, so this is its address: {url}',
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
  'command.deployment-variable': 'Set {name} as well: the stack of the data says it among its outputs.',
} as const;
