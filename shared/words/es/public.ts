import type { publicPages as english } from '../en/public.ts';

export const publicPages: Record<keyof typeof english, string> = {
  'public.skip': 'Ir al contenido',
  'public.app-needs-script':
    'Esta página necesita un script para funcionar, y su navegador los tiene desactivados.',
};
