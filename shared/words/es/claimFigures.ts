import type { claimFigures as english } from '../en/claimFigures.ts';

export const claimFigures: Record<keyof typeof english, string> = {
  'search.title': 'Buscar',
  'search.find': 'Número de reclamación, hidrante, día, pagador, lugar o placa',
  'search.none': 'No se encontró nada para «{find}».',
  'search.more': 'y {count, plural, one {# más} other {# más}}; escriba más para acotar',
  'search.claim': 'Reclamación {claimNumber}',
  'search.by.claim-number': 'número de reclamación',
  'search.by.hydrant': 'hidrante',
  'search.by.day': 'día',
  'search.by.payer': 'pagador',
  'search.by.place': 'lugar',
  'search.by.plate': 'placa',
};
