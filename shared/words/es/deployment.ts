import type { deployment as english } from '../en/deployment.ts';

export const deployment: Record<keyof typeof english, string> = {
  'problem.public-url-not-domain': 'Hay un dominio fijado, así que esta es su dirección: {url}',
};
