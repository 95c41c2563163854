import type { common as english } from '../en/common.ts';

export const common: Record<keyof typeof english, string> = {
  'app.name': 'Hydrant Strike Ledger',
  'problem.uuid-v7': 'Debe ser un UUID de versión 7.',
  'problem.not-a-submission': 'Envíe un registro como objeto JSON.',
  'problem.newer-schema':
    'Lo escribió una versión más nueva que la del servidor (la más nueva conocida: {newest}). Pida que actualicen el servidor; conserve el registro.',
  'problem.wrong-subject': 'Este formulario trata de uno de estos: {allowed}.',
  'problem.interval-ends-before-start': 'El final debe ser posterior al comienzo.',
  'problem.jet-without-flow': 'Indicó que no salía agua. Déjelo vacío o cambie lo que salía.',
  'problem.hydrant-or-place': 'Diga qué hidrante es: su número, su posición o dónde está, con palabras.',
  'problem.basis-needs-time': 'Indique la hora del choque o diga que no se sabe.',
  'problem.before-the-strike': 'Es anterior al choque. Revise ambas horas.',
  'problem.work-overlaps': 'Se solapa con otro tramo de trabajo de la misma persona.',
  'problem.break-outside-work': 'Este descanso queda fuera de las horas trabajadas.',
  'problem.completed-needs-reassembled':
    'Diga cuándo se cerró el hidrante; las pruebas deben ser posteriores.',
  'problem.worker-twice': 'Esta persona figura dos veces. Ponga todas sus horas en una línea.',
  'problem.residual-not-below-static':
    'La presión residual debe ser menor que la estática. Si no lo es, no corría agua o las lecturas están cambiadas: repita ambas.',
  'problem.target-not-below-static': 'La presión de referencia debe ser menor que la estática.',
  'problem.flow-or-outlets':
    'Indique las lecturas de Pitot de al menos una boca abierta, o el caudal medido.',
  'problem.deferred-needs-reason': 'Diga por qué se aplaza esta prueba.',
  'problem.deferred-needs-name': 'Diga quién permitió aplazar esta prueba.',
  'problem.marked-or-told': 'Diga cuándo se marcó el hidrante o cuándo se avisó a la central.',
};
