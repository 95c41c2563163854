import type { demo as english } from '../en/demo.ts';

export const demo: Record<keyof typeof english, string> = {
  'demo.begin': 'Se hace el trabajo principal por la API HTTP, desde un almacén vacío, para {utility}.',
  'demo.inventory': 'Inventario cargado: {hydrants, number} hidrantes.',
  'demo.step.strike': 'Choque registrado: a boca llena, tráfico; central avisada',
  'demo.step.shut': 'Válvula de aislamiento cerrada, hidrante marcado, agua perdida anotada',
  'demo.step.party': 'Vehículo, conductor, aseguradora e informe policial tomados en el lugar',
  'demo.step.repair': 'Reparación de la brida de rotura hecha, paso a paso',
  'demo.step.flow-test': 'Prueba de caudal después de la reparación',
  'demo.step.return': 'Pruebas superadas, válvula reabierta, central avisada: de nuevo en servicio',
  'demo.step.claim': 'Reclamación 2026-0001 abierta contra la aseguradora del conductor',
  'demo.public': 'Página pública: {out, number} de {hydrants, number} fuera de servicio',
  'demo.photo': 'Fotos recibidas: {count, number}',
  'demo.class': 'Capacidad {flow}, clase {class}',
  'demo.no-class': 'Sin clase: {reason}',
  'demo.frozen': 'Expediente cerrado, revisión {revision, number}, SHA-256 {sha256}',
  'demo.statement': 'Estado de costos',
  'demo.total': 'Total',
  'demo.files': 'Escrito: {packet} ({pages, number} páginas) y {status}',
  'demo.equal': 'Cada total impreso aquí es igual al leído del PDF.',
  'demo.differs': 'El PDF dice {pdf} en {section} y el estado dice {statement}.',
};
