import type { procedure as english } from '../../en/forms/procedure.ts';

export const procedure: Record<keyof typeof english, string> = {
  'step.traffic-and-protection': 'Tráfico controlado y equipo de protección puesto',
  'step.traffic-and-protection.caution':
    'Ponga conos y luces antes de pisar la calzada. Deje el vehículo donde está hasta controlar los cables con corriente y el agua.',
  'step.isolated': 'Válvula de corte cerrada',
  'step.isolated.caution':
    'Cuente las vueltas y anótelas. Si no cierra, cierre la siguiente y anote quién queda sin agua.',
  'step.pressure-gone': 'Comprobado que no hay presión',
  'step.pressure-gone.caution':
    'El agua a presión puede lanzar la tapa. Afloje despacio una tapa de boca, colóquese a un lado y vea que no salga nada.',
  'step.drained': 'Cuerpo vaciado',
  'step.drained.caution': 'Si el drenaje está tapado, achique con bomba. No desarme nada con agua dentro.',
  'step.taken-down': 'Piezas rotas desmontadas',
  'step.taken-down.caution':
    'La sección de bocas pesa: levántela con eslinga o entre dos, y no meta las manos en la brida.',
  'step.stem-freed': 'Vástago liberado',
  'step.stem-freed.caution': 'Un vástago en tensión puede saltar. No ponga la cara ni las manos en su línea.',
  'step.top-opened': 'Parte superior abierta',
  'step.top-opened.caution':
    'Afloje los pernos por turnos y manténgase apartado hasta saber que no hay presión.',
  'step.hidden-damage-checked': 'Revisado en busca de daños ocultos',
  'step.hidden-damage-checked.caution':
    'Busque vástago doblado, cuerpo agrietado, asiento rayado o drenaje tapado. Cualquiera puede exigir excavar: localice antes otros servicios.',
  'step.faces-cleaned-gaskets-new': 'Caras limpias y juntas nuevas',
  'step.faces-cleaned-gaskets-new.caution':
    'Protéjase los ojos al raspar. Use solo lubricante apto para agua potable.',
  'step.breakaway-parts-fitted': 'Piezas de rotura nuevas colocadas',
  'step.breakaway-parts-fitted.caution': 'Tienen una posición correcta: siga el dibujo del fabricante.',
  'step.nozzle-section-set': 'Sección de bocas colocada, mirando a la calle',
  'step.nozzle-section-set.caution':
    'Carga pesada que puede atrapar: guíela con una barra, no con los dedos.',
  'step.tightened-to-torque': 'Pernos apretados en cruz a su par',
  'step.tightened-to-torque.caution':
    'Use el par del fabricante para este modelo; demasiado puede agrietar la brida.',
  'step.thrust-nut-set': 'Tuerca de empuje ajustada, gira libre',
  'step.thrust-nut-set.caution': 'Si se traba, vuelva a desarmar: un vástago forzado esconde una torcedura.',
  'step.top-closed': 'Parte superior cerrada',
  'step.top-closed.caution': 'Siga el orden del fabricante para tapa, sellos y cubierta.',
  'step.refilled-slowly': 'Llenado despacio',
  'step.refilled-slowly.caution':
    'Abra la válvula de corte poco a poco con una tapa floja para que salga el aire. El aire atrapado puede hacer saltar una tapa.',
  'step.caps-on': 'Tapas puestas',
  'step.caps-on.caution':
    'Enjuague antes, con el chorro lejos del tráfico, de la gente y de los cables con corriente.',
};
