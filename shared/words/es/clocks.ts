import type { clocks as english } from '../en/clocks.ts';

export const clocks: Record<keyof typeof english, string> = {
  'clock.acknowledge-by': 'Acuse de recibo del pagador',
  'clock.answer-by': 'Respuesta del pagador',
  'clock.pay-by': 'Pago',
  'clock.follow-up-by': 'Dar seguimiento',
  'clock.information-due': 'Información que pidió el pagador',
  'clock.offer-expires': 'Vence la oferta',
  'clock.own-policy-notice': 'Aviso a la aseguradora propia',
  'clock.government-notice': 'Aviso de reclamación al gobierno',
  'clock.limitation': 'Último día para demandar',
  'clock.retention-end': 'Fin de la conservación',
  'clock.instalment-due': 'Cuota del plan de pagos',

  'clock.state.running': 'abierto',
  'clock.state.due-today': 'vence hoy',
  'clock.state.overdue': 'vencido',
  'clock.state.met': 'hecho',
  'clock.state.answered': 'respondido por nombre',
  'clock.state.held': 'se conserva: retención legal',
  'clock.state.reached': 'terminó la conservación',

  'clock.of': 'tras {start} del {on}',
  'clock.ended.claim-referred': 'Ya no se espera: remitida el {on}',
  'clock.ended.deadline-answered': 'Ya no se espera: demanda presentada, respondido el {on}',
  'clock.start.strike': 'el golpe',
  'clock.start.claim-opened': 'la apertura de la reclamación',
  'clock.start.demand-sent': 'la exigencia de pago',
  'clock.start.letter-sent': 'la carta',
  'clock.start.claim-acknowledged': 'el acuse de recibo',
  'clock.start.adjuster-assigned': 'la asignación del ajustador',
  'clock.start.information-asked': 'la petición del pagador',
  'clock.start.information-given': 'la información entregada',
  'clock.start.line-disputed': 'la objeción',
  'clock.start.dispute-answered': 'la respuesta a la objeción',
  'clock.start.offer-made': 'la oferta',
  'clock.start.offer-answered': 'la aceptación',
  'clock.start.payment-received': 'el pago',
  'clock.start.claim-denied': 'la negativa',
  'clock.start.claim-referred': 'la remisión',
  'clock.start.restitution-ordered': 'la orden del tribunal',
  'clock.start.payment-plan': 'el plan de pagos',
  'clock.start.claim-closed': 'el cierre',
  'clock.start.claim-reopened': 'la reapertura',

  'clock.span.calendar-days': '{count, plural, one {# día} other {# días}}',
  'clock.span.working-days': '{count, plural, one {# día hábil} other {# días hábiles}}',
  'clock.span.months': '{count, plural, one {# mes} other {# meses}}',
  'clock.span.years': '{count, plural, one {# año} other {# años}}',
  'clock.rule': '{span} después de: {start}, {on}{roll}',
  'clock.rule.year-after': 'un año más que el último día para demandar ({span} después de: {start}, {on})',
  'clock.rule.named': 'el día que nombra: {start}, {on}',
  'clock.roll.next-working-day': '; un día inhábil pasa al hábil siguiente',
  'clock.roll.day-before': '; un día inhábil pasa al hábil anterior',
  'clock.roll.stays': '',

  'clock.whose.utility': 'Fecha propia de la empresa de agua',
  'clock.whose.named': 'Fecha que nombran los papeles',
  'clock.whose.payer-target':
    'Meta fijada a las aseguradoras por {citation}; no es un derecho de la empresa de agua',
  'clock.source': 'Según {citation}{jurisdiction}',
  'clock.confirm': 'Sin confirmar: que lo confirme un abogado.',
  'clock.confirmed': 'Confirmado por {name} el {on}.',
  'clock.moved': 'Movido del {from} al {to} por nombre.',
  'clock.unset.limitation': 'No hay último día para demandar; de ninguno se avisa.',
  'clock.unset.follow-up-by': 'Ninguna regla dice cuándo dar seguimiento.',
  'clock.unset.government-notice': 'Ninguna regla dice cuándo avisar a un gobierno.',
  'clock.unset.own-policy-notice': 'Ninguna regla dice cuándo avisar a la aseguradora propia.',
  'clock.unset.retention-end': 'Ninguna regla dice cuánto se conservan los expedientes.',

  'calendar.name': 'Reclamaciones de {utility}',
  'calendar.summary': '{claimNumber}: {clock}',
  'calendar.done': 'Ya no vence.',
  'calendar.alarm': '{claimNumber}: {clock}, {on}',
  'calendar.not-advice': 'Contado según los ajustes propios de la empresa. No es consejo legal.',

  'digest.subject':
    '{utility}, {on}: {overdue, plural, =0 {} one {# vencido, } other {# vencidos, }}{today, plural, =0 {nada vence hoy} one {# vence hoy} other {# vencen hoy}}',
  'digest.greeting': 'Lo que vence en las reclamaciones, al {on}.',
  'digest.overdue': 'Vencido',
  'digest.today': 'Vence hoy',
  'digest.week': 'Vence en una semana',
  'digest.limitation': 'Últimos días para demandar y avisos a gobiernos',
  'digest.records': 'Terminó la conservación',
  'digest.quiet': 'Abiertas, y no corre ninguna fecha',
  'digest.quiet.line': '  {claimNumber}  {standing}',
  'desk.quiet': 'Abiertas, y no corre ninguna fecha',
  'desk.quiet.what':
    'Ninguna regla ni documento les fija la próxima fecha, así que nada vencerá aquí. Decida quién hace qué.',
  'digest.line': '{on}  {claimNumber}  {clock}',
  'digest.line.source': '            {source}',
  'digest.more': '            y {count, plural, one {# más} other {# más}} en el escritorio',
  'digest.nothing': 'Nada está vencido y nada vence en una semana.',
  'digest.unset': 'Sin vigilar, porque no hay regla:',
  'digest.undelivered':
    '{count, plural, one {# carta anterior no se pudo} other {# cartas anteriores no se pudieron}} entregar; el escritorio dice cuáles.',
  'digest.desk': 'El escritorio: {address}',
  'digest.footer':
    'Las fechas se cuentan según los ajustes propios de la empresa, que un abogado debe confirmar. No es consejo legal.',

  'command.letters':
    '{sent, plural, one {# carta} other {# cartas}} de lo que vence en {folder} (desde aquí no se envía correo).',

  'problem.clock-too-long':
    'Una regla de esta unidad cuenta como máximo {most} {unit, select, years {años} months {meses} other {días}}. ¿Es otra unidad?',
  'problem.clock-starts-elsewhere': 'Un plazo de esta clase ({clock}) empieza con uno de: {allowed}.',
  'problem.clock-is-the-utilitys':
    'Solo acusar recibo, responder y pagar pueden ser metas fijadas a las aseguradoras; este plazo ({clock}) es de la empresa de agua.',
  'problem.clock-rule-twice':
    'La regla {other} fija el mismo plazo ({clock}) desde el mismo hecho para algunos de los mismos pagadores. Deje una.',
  'problem.deadline-not-answered-so':
    'Esta respuesta ({answer}) no vale para esta fecha: no se mueve así, o falta el día nuevo o no es posterior.',
  'problem.no-such-calendar':
    'No hay calendario en esta dirección. Puede estar revocado; el escritorio hace otro.',
  'problem.calendar-of-another': 'Solo un gerente puede revocar el calendario de otra persona.',
};
