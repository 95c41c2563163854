import type { payments as english } from '../en/payments.ts';

export const payments: Record<keyof typeof english, string> = {
  'problem.reverses-no-payment':
    'Esta reversión es de un pago que no consta. Registre el pago o corrija la reversión.',
  'problem.reversal-above-payment':
    'Se revirtió más de lo que entró: {amountCents, number} centavos de {leftCents, number}. Corrija uno de los dos.',
  'problem.refund-above-payments':
    'Se reembolsó más de lo que se pagó y quedó. Corrija el reembolso o registre el pago al que pertenece.',
  'problem.shared-above-paid': 'Se entregó más de lo que se recuperó. Corrija la parte.',
  'problem.write-off-above-balance': 'Se dio de baja más de lo que se debía. Corrija la baja.',
  'problem.payment-without-demand':
    'Entró dinero antes de que constara una exigencia de pago. Registre la exigencia o diga para qué es el dinero.',
  'problem.overpaid':
    'Se pagó más de lo que se pidió. La diferencia es del pagador: devuélvala o acuerde para qué es.',
  'problem.answers-nothing':
    'Esto responde a algo que no consta en esta reclamación. Corrija a qué responde.',
  'problem.event-later-than-recorded': '{on} es posterior al día en que se registró. Corrija el día.',
  'problem.closed-with-balance':
    'La reclamación está cerrada y una parte no está pagada ni dada de baja. Déla de baja con nombre o reabra la reclamación.',
  'problem.payment-held':
    'Hay un cheque en el cajón. Decida qué significa su marca y luego deposítelo o devuélvalo.',
  'problem.full-payment-cashed':
    'Se depositó un cheque marcado como pago total mientras había renglones disputados. Eso puede terminar la reclamación (UCC 3-311). Pregunte a un abogado; devolverlo en 90 días puede deshacerlo donde la ley tiene esa regla.',
};
