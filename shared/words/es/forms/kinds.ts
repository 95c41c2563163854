import type { kinds as english } from '../../en/forms/kinds.ts';

export const kinds: Record<keyof typeof english, string> = {
  'kind.strike': 'Informe de choque',
  'kind.party': 'Vehículo, conductor y aseguradora',
  'kind.outage': 'Fuera de servicio por otra causa',
  'kind.out-of-service-notice': 'Marcado, o aviso a la central',
  'kind.expected-return': 'Regreso previsto',
  'kind.inspection': 'Inspección',
  'kind.planned-work': 'Trabajo previsto',
  'kind.valve-operation': 'Válvula cerrada o reabierta',
  'kind.water-lost': 'Agua perdida',
  'kind.repair': 'Reparación',
  'kind.flow-test': 'Prueba de caudal',
  'kind.return-to-service': 'Vuelta al servicio',
  'kind.link': 'Dos informes de un mismo choque',
  'kind.correction': 'Corrección',
  'kind.claim-opened': 'Reclamación abierta',
  'kind.packet-frozen': 'Expediente emitido',
  'kind.demand-sent': 'Reclamo de pago enviado',
  'kind.inventory-loaded': 'Inventario cargado',
  'kind.rate-book': 'Edición de tarifas',
  'kind.hydrant-model': 'Modelo de hidrante',

  'stage.reported': 'Informado',
  'stage.shut-off': 'Agua cortada',
  'stage.waiting': 'En espera',
  'stage.under-repair': 'En reparación',
  'stage.repaired': 'Reparado, aún fuera de servicio',
  'stage.back': 'De nuevo en servicio',

  'claim-stage.open': 'Abierta',
  'claim-stage.frozen': 'Expediente emitido',
  'claim-stage.billed': 'Reclamo de pago enviado',

  'proof.no-leaks': 'Sin fugas bajo presión',
  'proof.opens-and-closes-fully': 'Abre y cierra por completo',
  'proof.drains-down': 'El cuerpo se vacía',
  'proof.flow-test': 'Prueba de caudal',

  'hold.proof-missing': 'Aún sin registrar: {proof}.',
  'hold.proof-failed': 'No superada: {proof}.',
  'hold.hydrants-differ':
    'Los informes de este choque nombran hidrantes distintos. Corrija el que esté mal o retire el enlace.',
  'hold.proof-before-outage': 'Hecha antes de quedar fuera de servicio: {proof}. Repítala.',
  'hold.proof-before-reassembly': 'Hecha antes de cerrar el hidrante por última vez: {proof}. Repítala.',
  'hold.proof-not-yet': 'Con fecha posterior a su registro: {proof}. Corrija la hora.',
  'hold.return-before-outage':
    'Este regreso tiene fecha anterior al comienzo de la interrupción. Corrija la hora.',
  'hold.return-not-yet': 'Este regreso tiene fecha posterior a su registro. Corrija la hora.',
  'hold.failed-since': 'Un regreso posterior registra una prueba como fallida.',
  'hold.valve-still-closed': 'La válvula {valveId} consta como cerrada y no como reabierta.',
  'hold.repair-still-open': 'El hidrante se abrió y no consta que se volviera a cerrar.',

  'breach.take-down-before-safe':
    '{byWorkerId} lo desmontó antes de que alguien confirmara con su nombre: {missing}.',
  'kind.documents': 'Papeles',
  'kind.week-hours': 'Horas de la semana',
  'kind.credit': 'Crédito',
  'kind.counter-calculation': 'Contracálculo',
  'kind.claim-handling': 'Tiempo dedicado a la reclamación',
  'kind.letter-text': 'Texto de carta',
  'kind.objection-answer': 'Respuesta a una objeción',
};
