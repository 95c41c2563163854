import type { letters as english } from '../en/letters.ts';

const incident =
  'Hora del choque: {struckAt}. Nuestras cuadrillas lo pusieron en condiciones seguras y lo repararon.[ Volvió al servicio el {returnedAt}.]';
const changed = '[Esta es la revisión {revision} de nuestro expediente. Qué ha cambiado: {changes}]';
const cost =
  'Ese trabajo costó {total}. Le reclamamos {demand}.[ Otras reclamaciones por el mismo daño suman {otherDemands}; juntas no superan la relación.] La relación de costos que sigue da cada línea con su tiempo o cantidad, su tarifa, la autoridad de esa tarifa y la cuenta.';
const pay = 'Cite la reclamación {claimNumber} con su pago y envíelo a:';
const enclosed =
  'Con esta carta: relación de costos, relato del daño y de la reparación, cronología, prueba de caudal, fotografías y lista de registros; las cifras, también en el archivo adjunto statement.json. Los originales se conservan y pueden examinarse.[ {howToCheck}]';
const ask =
  'Si no está de acuerdo con una línea, díganos cuál y por qué, o llame al {utilityPhone}. Si un pago ha de saldar por completo menos de lo reclamado, díganoslo antes de enviarlo.';
const paragraphs = (...all: readonly string[]): string => all.join('\n\n');

/** Spanish words: the letters that a claim sends. */
export const letters: Record<keyof typeof english, string> = {
  'letter.title': 'Carta del expediente',
  'letter.intro':
    'El expediente se abre con esta carta. Sus campos entre llaves se completan cuando se hace el expediente. El texto entre [corchetes] se omite donde uno de sus campos está vacío.',
  'letter.open': 'Leer y editar la carta',
  'letter.text-label': 'Texto de la carta',
  'letter.insert': 'Poner un campo en el texto',
  'letter.insert-empty': 'no consta',
  'letter.preview': 'Como se leerá',
  'letter.save': 'Registrar este texto',
  'letter.saving': 'Registrando…',
  'letter.saved': 'Registrado. El próximo expediente se abre con él.',
  'letter.queued': 'Guardado en este dispositivo; se envía en cuanto haya señal.',
  'letter.not-kept': 'Este dispositivo no quiso guardar el texto. Cópielo antes de salir de la página.',
  'letter.reset': 'Volver a la plantilla',
  'letter.undo': 'Volver a lo registrado',
  'letter.draft': 'Cambiado y aún no registrado. Los cambios se guardan en este dispositivo.',
  'letter.is-template': 'Esta es la plantilla; nadie la ha cambiado.',
  'letter.is-recorded': 'Este es el texto registrado.',
  'letter.problems': 'Hay que arreglar esto antes de poder emitir el expediente:',
  'letter.evidence': 'Lo que pide este pagador',
  'letter.there': 'Está',
  'letter.not-there': 'Falta',
  'letter.put-right': 'No se registró. Corrija primero lo que se dice arriba.',
  'letter.empty-text': 'Una carta necesita texto.',
  'letter.footer': 'Esta carta expone hechos y costos; no es asesoramiento legal.',
  'letter.struck-unknown': 'no se sabe; el primer registro es del {since}',
  'letter.driver-left': 'Quien conducía dejó el lugar y no se nos ha identificado.',
  'letter.loss-total': 'Total: {total}',

  'letter.kind.demand-insurer': 'Reclamación a la aseguradora de quien conducía',
  'letter.kind.demand-driver': 'Reclamación a quien conducía',
  'letter.kind.demand-self-insured': 'Reclamación a un propietario que se asegura a sí mismo',
  'letter.kind.notice-government': 'Aviso y reclamación a un organismo público',
  'letter.kind.claim-own-policy': 'Reclamación a la póliza propia',
  'letter.kind.restitution-statement': 'Declaración de pérdida para la restitución',
  'letter.kind.cover-unknown-payer': 'Carta mientras no se sabe quién paga',

  'letter.caution.notice-government':
    'Antes de reclamar a un organismo público puede exigirse un aviso de reclamación en cierta forma y plazo, y el plazo puede ser corto. Puede que esta carta no sea ese aviso: que lo confirme un abogado.',
  'letter.caution.claim-own-policy':
    'Una póliza puede fijar su propia forma y plazo para la prueba de la pérdida, y qué efecto tiene un pago de otro. Lea la póliza, o que lo confirme un abogado.',
  'letter.caution.restitution-statement':
    'Un tribunal o una fiscalía puede tener su propio formulario y su propia regla de qué cuenta como pérdida. Que lo confirme un abogado, e infórmeles de cada pago recibido.',
  'letter.caution.cover-unknown-payer':
    'No se nombra a nadie que pague, así que este expediente puede verse y no emitirse. Nombre al pagador en la reclamación en cuanto se conozca.',

  'letter.field.claimNumber': 'Número de reclamación',
  'letter.field.date': 'Fecha del expediente',
  'letter.field.utility': 'Nombre de la empresa de agua',
  'letter.field.utilityPhone': 'Teléfono de la empresa de agua',
  'letter.field.utilityEmail': 'Correo de la empresa de agua',
  'letter.field.payer': 'Nombre del pagador',
  'letter.field.payerAttention': 'A la atención de quién',
  'letter.field.payerReference': 'Número propio del pagador: expediente, reclamación, póliza o causa',
  'letter.field.policy': 'Número de póliza',
  'letter.field.hydrant': 'El hidrante',
  'letter.field.place': 'Dónde está',
  'letter.field.struckAt': 'Hora del choque',
  'letter.field.returnedAt': 'Hora de vuelta al servicio',
  'letter.field.driverLeft': 'Que quien conducía se fue, tras una fuga',
  'letter.field.policeReport': 'Número del informe policial',
  'letter.field.policeAgency': 'Cuerpo de policía',
  'letter.field.crashReport': 'Código del informe de choque',
  'letter.field.vehicle': 'El vehículo',
  'letter.field.total': 'Total de la relación',
  'letter.field.demand': 'Lo que pide esta reclamación',
  'letter.field.otherDemands': 'Lo que piden otras reclamaciones del choque',
  'letter.field.itemizedLoss': 'La pérdida por clase de costo, con su total',
  'letter.field.remitTo': 'Dónde pagar',
  'letter.field.signedBy': 'Quién firma',
  'letter.field.deductible': 'Deducible de la póliza propia',
  'letter.field.lessDeductible': 'Lo reclamado menos el deducible',
  'letter.field.howToCheck': 'Dónde puede comprobarse el expediente y qué significan las respuestas',
  'letter.field.revision': 'Revisión del expediente',
  'letter.field.changes': 'Qué cambió desde la última revisión',

  'letter.demand-insurer.text': paragraphs(
    'A quien corresponda:',
    `Un vehículo que ustedes aseguran, según la información que tenemos, chocó contra {hydrant}[, en {place}]. ${incident}`,
    cost,
    changed,
    pay,
    '{remitTo}',
    ask,
    'Indíquennos su número de reclamación y si aceptan que su asegurado es responsable. Si no lo aceptan, digan en qué hechos se basan.',
    enclosed,
  ),
  'letter.demand-driver.text': paragraphs(
    'A la atención de {payer}:',
    `Según la información que tenemos, usted conducía el vehículo que chocó contra {hydrant}[, en {place}]. ${incident}`,
    cost,
    changed,
    'Si ese día tenía seguro, envíe este expediente a su aseguradora y díganos el nombre de ella y el número de su póliza. Entonces les escribiremos a ellos.',
    pay,
    '{remitTo}',
    'Si no está de acuerdo con una línea, díganos cuál y por qué. Si no puede pagarlo de una vez, llámenos al {utilityPhone} para pagar en partes.',
    enclosed,
  ),
  'letter.demand-self-insured.text': paragraphs(
    'Al departamento de reclamaciones de {payer}:',
    `Un vehículo suyo, según la información que tenemos, chocó contra {hydrant}[, en {place}]. ${incident}`,
    'Entendemos que ustedes responden de los daños de sus propios vehículos. Si lo hace por ustedes una aseguradora o un administrador de reclamaciones, envíenle este expediente y díganos quién es.',
    cost,
    changed,
    pay,
    '{remitTo}',
    ask,
    enclosed,
  ),
  'letter.notice-government.text': paragraphs(
    'A la atención de {payer}:',
    `{utility} da aviso de una reclamación por daños a sus bienes. Según la información que tenemos, un vehículo a su servicio chocó contra {hydrant}[, en {place}]. ${incident}`,
    'Reclamante: {utility}. Número de reclamación: {claimNumber}. Costo del trabajo: {total}. Importe reclamado: {demand}.[ Otras reclamaciones por el mismo daño suman {otherDemands}.] La relación de costos que sigue da cada línea con su tiempo o cantidad, su tarifa, la autoridad de esa tarifa y la cuenta.',
    changed,
    'Si este aviso debe darse en otra forma o a otra oficina, díganos sin demora cuál y envíennos el formulario.',
    pay,
    '{remitTo}',
    ask,
    enclosed,
  ),
  'letter.claim-own-policy.text': paragraphs(
    'A la atención de {payer}:',
    `Comunicamos una pérdida bajo nuestra póliza[ {policy}]. Un vehículo chocó contra {hydrant}[, en {place}]. ${incident}[ {driverLeft}]`,
    'La pérdida suma {total}; la relación de costos adjunta la da línea por línea, con sus registros, en apoyo de nuestra prueba de la pérdida. Si la necesitan en su propio formulario o bajo juramento, envíennos el formulario.',
    'Reclamamos {demand}, sujeto al deducible de la póliza.[ Según nuestros registros es de {deductible}; descontado, pedimos {lessDeductible}.] Confirmen el deducible que se aplica a esta pérdida y lo que hayan restado por él.[ Otras reclamaciones por el mismo daño suman {otherDemands}.]',
    changed,
    'Si recobran de quien sea responsable, incluyan nuestro deducible.',
    'El pago se envía a:',
    '{remitTo}',
    enclosed,
  ),
  'letter.restitution-statement.text': paragraphs(
    'A la atención de {payer}:',
    `{utility} declara su pérdida a efectos de restitución. Un vehículo chocó contra {hydrant}[, en {place}]. ${incident}`,
    'La pérdida, por clase de costo:\n{itemizedLoss}',
    'Restitución que se pide: {demand}, que se envía con la reclamación {claimNumber} a la dirección de abajo.[ Las reclamaciones a otros por el mismo daño suman {otherDemands}; informaremos de cada pago recibido, para que nada se pague dos veces.]',
    changed,
    '{remitTo}',
    `${enclosed} Si hay que probar los registros de la relación, puede nombrarse a una persona que los conoce.`,
  ),
  'letter.cover-unknown-payer.text': paragraphs(
    'A quien corresponda:',
    `Un vehículo chocó contra {hydrant}[, en {place}]. ${incident}[ {driverLeft}] Todavía no sabemos quién ha de pagar el daño.`,
    'Ese trabajo costó {total}. La pérdida, por clase de costo:\n{itemizedLoss}',
    changed,
    'Si sabe algo del vehículo, de quien lo conducía, de su dueño o de una aseguradora, díganoslo al {utilityPhone}, con la reclamación {claimNumber}.',
    enclosed,
  ),

  'letter.evidence.report-number': 'Número del informe policial o de choque',
  'letter.evidence.police-report': 'El informe policial mismo, entre los papeles',
  'letter.evidence.photos-of-damage': 'Una foto del daño',
  'letter.evidence.time-and-place': 'Hora y lugar del choque',
  'letter.evidence.crew-hours': 'Horas de la cuadrilla',
  'letter.evidence.invoices': 'Una factura de cada pieza comprada y de cada contratista',
  'letter.evidence.condition-before': 'Una inspección o prueba de caudal de antes del choque',
  'letter.evidence.return-to-service': 'La vuelta al servicio, con sus comprobaciones',
  'letter.evidence.policy-or-claim-number':
    'El número de póliza del asegurado, o el de reclamación de la aseguradora',
  'letter.evidence.vehicle': 'Placa o VIN del vehículo',
  'letter.evidence.payer-address': 'Nombre y dirección del pagador',
  'letter.evidence.driver-named': 'Quién conducía, por su nombre',
  'letter.evidence.own-policy-number':
    'El número de la póliza, como número propio del pagador en la reclamación',
  'letter.evidence.case-number': 'El número de la causa, como número propio del pagador en la reclamación',
  'letter.evidence.complete-statement':
    'Una relación de costos en la que a ninguna línea le falte el importe',

  'objection.evidence-for-payer':
    'La carta de esta reclamación va a alguien que pide más: {evidence, select, policeReport {el informe policial mismo} vehicle {la placa o el VIN del vehículo} payerAddress {el nombre y la dirección del pagador} driverNamed {el nombre de quien conducía} ownPolicyNumber {el número de la póliza propia} caseNumber {el número de la causa} other {{evidence}}}.',
  'objection.evidence-for-payer.answer': 'Añádalo al registro, o diga en la carta por qué no lo hay.',

  'problem.letter-field-unknown': 'La carta usa un campo «{field}» que no existe. Elija uno de la lista.',
  'problem.letter-field-empty':
    'La carta usa el campo «{field}», y no consta nada para él. Regístrelo, quítelo o ponga su frase entre [corchetes].',
  'problem.letter-brace': 'La carta tiene una llave sin su pareja. Un campo está entre dos.',
  'problem.letter-bracket': 'La carta tiene un corchete sin su pareja. Lo que puede omitirse está entre dos.',
};
