/** English words: deploying, the commands that speak to a deployment. */
export const deployment = {
  'problem.public-url-not-domain': 'A domain is set, so this is its address: {url}',
} as const;
