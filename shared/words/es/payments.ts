import type { payments as english } from '../en/payments.ts';

export const payments: Record<keyof typeof english, string> = {
  'problem.reverses-no-payment':
    'Esta reversión es de un pago que no consta. Registre el pago o corrija la reversión.',
  'problem.reversal-above-payment':
    // eslint-disable-next-line no-template-curly-in-string -- a dollar sign, and then a parameter
    'Se revirtió más de lo que entró: ${amountCents, number, ::scale/0.01 .00} de ${leftCents, number, ::scale/0.01 .00}. Corrija uno de los dos.',
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
  'caution.full-payment.held':
    'Este pago viene marcado como total y es menor que lo reclamado. Decida qué significa la marca antes de depositarlo: cobrarlo puede poner fin a la reclamación.',
  'caution.full-payment.cashed':
    'Este pago venía marcado como total, es menor que lo reclamado y se depositó. Eso puede poner fin a la reclamación.',
  'caution.full-payment.disputed':
    'La reclamación se había objetado, recortado o rechazado antes, y eso es una de las cosas que un tribunal pregunta.',
  'caution.full-payment.not-disputed':
    'No consta ninguna objeción anterior. Revise cartas y llamadas: una objeción que no se anotó cuenta igual.',
  'caution.full-payment.no-cheque':
    'La UCC 3-311 habla de cheques y similares. Otra forma de pago puede cerrar una reclamación por acuerdo; pregunte a un abogado.',
  'caution.full-payment.repay-by':
    'La regla anotada permite ofrecer la devolución del dinero dentro de {days, plural, one {# día} other {# días}} de su pago: a más tardar el {date}, contado desde el día en que llegó. No sirve si quien lleva la reclamación conocía la marca antes de cobrarlo.',
  'caution.full-payment.office':
    'Se pidió a los pagadores enviar esos cheques a: {office}. Compruebe adónde llegó este. Con ese aviso, el dinero no se puede devolver para deshacerlo.',
  'caution.full-payment.no-rule':
    'No hay una regla de su estado para esto (el texto modelo es UCC 3-311). Pida confirmación a un abogado y anótela.',
  'caution.full-payment.to-confirm': '{citation}, {jurisdiction}: aún sin confirmar por un abogado.',
  'caution.full-payment.confirmed': '{citation}, {jurisdiction}, confirmado por {name} el {date}.',
  'problem.refund-of-no-payment':
    'Este reembolso es de un pago que no consta. Registre el pago o corrija el reembolso.',
  'problem.refund-above-overpaid':
    'Se reembolsó más de lo que se pagó de más, así que parte de la reclamación vuelve a estar abierta. Corrija el reembolso o cierre el resto con nombre.',
  'problem.restitution-above-statement':
    'El tribunal ordenó más de lo que suma el estado de costos. Revise el importe y si cubre otros daños.',
  'problem.closed-with-held-payment':
    'La reclamación está cerrada con un pago retenido. Deposítelo, devuélvalo o reabra la reclamación.',
  'problem.event-before-strike': '{on} es anterior al choque ({struckOn}). Corrija el día.',
  'problem.event-before-opening':
    '{on} es anterior a la apertura de la reclamación ({openedOn}). Corrija el día, o el de la apertura.',
  'problem.claim-is-closed':
    'Esta reclamación está cerrada: lo que dejó sin pagar puede pedirse a otros. Reábrala antes de emitir otro expediente.',
  'problem.claims-above-statement':
    // eslint-disable-next-line no-template-curly-in-string -- a dollar sign, and then a parameter
    'Las reclamaciones de este choque piden ${tooMuchCents, number, ::scale/0.01 .00} más que su estado de costos, porque una se pagó, se reabrió, o el estado bajó. Envíe un reclamo de pago revisado.',
  'problem.strike-overpaid':
    'Las reclamaciones de este choque cobraron más de lo que suma su estado de costos. Averigüe de quién es el dinero y devuélvalo.',
  'problem.shared-above-insurer-paid':
    'Se entregó más de lo que la propia aseguradora pagó por este choque. Corrija la parte.',
  'standing.open': 'Abierta',
  'standing.packet-issued': 'Expediente emitido',
  'standing.demand-sent': 'Reclamo de pago enviado',
  'standing.acknowledged': 'Acuse recibido',
  'standing.information-asked': 'Información pedida',
  'standing.disputed': 'Objetada',
  'standing.offered': 'Oferta abierta',
  'standing.denied': 'Rechazada',
  'standing.part-paid': 'Pagada en parte',
  'standing.plan': 'Plan de pagos en curso',
  'standing.referred': 'Remitida',
  'standing.restitution': 'Restitución ordenada',
  'standing.written-off': 'Dada de baja',
  'standing.paid': 'Pagada',
  'standing.closed': 'Cerrada',
  'claim-flag.reopened': 'Reabierta',
  'claim-flag.held-payment': 'Pago retenido',
  'claim-flag.overpaid': 'Pagada de más',
  'claim-flag.plan-missed': 'Cuota sin pagar',
  'claim-flag.legal-hold': 'Conservación legal',
  'problem.ledger-ends-before-start': 'El último día no puede ser anterior al primero, {from}.',
};
