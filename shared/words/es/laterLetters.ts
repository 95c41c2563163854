import type { laterLetters as english } from '../en/laterLetters.ts';

const paragraphs = (...all: readonly string[]): string => all.join('\n\n');
const greeting = '[Estimado/a {adjuster}:]';
const pay = 'Indique la reclamación {claimNumber} con su pago y envíelo a:\n{remitTo}';
const call = 'Si prefiere llamar, estamos en el {utilityPhone}.';
const full = 'Si un pago ha de saldar todo con menos del saldo, díganoslo antes de enviarlo.';

export const laterLetters: Record<keyof typeof english, string> = {
  'letter.later.demand.text': paragraphs(
    greeting,
    'El {struckAt} un vehículo golpeó {hydrant}[ en {place}]. Pedimos {askedNow} por el costo de asegurarlo y repararlo. El expediente con la relación de costos y los registros que la respaldan se le envió[ el {demandedOn}].',
    pay,
    full,
    call,
  ),
  'letter.later.follow-up.text': paragraphs(
    greeting,
    'Le escribimos el {demandedOn}, hace {daysSinceDemand} días, para pedir {asked} por {hydrant}[ en {place}].[ Hemos recibido {paid}, que agradecemos.] El saldo es {balance}.',
    'Si necesita algo para decidir, díganos qué. Si ahora lleva la reclamación otra persona, díganos quién. De lo contrario le pedimos el pago, o una fecha en la que podamos esperarlo.',
    pay,
    call,
  ),
  'letter.later.reply-to-dispute.text': paragraphs(
    greeting,
    'Gracias por su respuesta a nuestra reclamación por {hydrant}.[ Usted escribió: {theirWords}] Hemos revisado cada punto con los registros.',
    '{reply}',
    'Los registros que se nombran aquí están en el expediente o se pueden inspeccionar. Si aún no acepta un renglón, díganos en qué registro o regla se apoya.',
    '[Hemos recibido {paid}, que agradecemos; lo tomamos como pago parcial salvo que nos diga otra cosa.] El saldo es {balance}.',
    pay,
    call,
  ),
  'letter.later.supplement.text': paragraphs(
    greeting,
    'Desde nuestra petición[ del {demandedOn}] han llegado más costos del mismo choque.[ Son {supplement} más de lo que pedimos antes.] Ahora pedimos {askedNow}[, de los que se han pagado {paid}].',
    'La revisión adjunta del expediente dice al principio qué cambió y por qué, y contiene los registros de los renglones añadidos.',
    pay,
    call,
  ),
  'letter.later.final-notice.text': paragraphs(
    greeting,
    'Nuestra petición de {asked} por {hydrant} se envió el {demandedOn}, hace {daysSinceDemand} días.[ Hemos recibido {paid}.] Siguen sin pagarse {balance} y no tenemos respuesta que diga por qué.',
    'Preferimos arreglarlo con usted. Pague el saldo o díganos por escrito qué disputa, dentro de los 30 días de esta carta. Después decidiremos cómo seguir con la reclamación sin volver a escribir; una manera es entregarla a nuestro abogado.',
    pay,
    call,
  ),
  'letter.later.payment-plan-offer.text': paragraphs(
    greeting,
    'El saldo de nuestra reclamación por {hydrant} es {balance}. Si no es posible pagarlo de una vez, ofrecemos recibirlo en partes:',
    '{instalments}',
    'Si acepta, firme y devuelva una copia de esta carta. No se suman intereses mientras las partes se paguen en su día. Si falta una parte, llámenos; entonces se puede pedir el resto de una vez.',
    pay,
    call,
  ),
  'letter.later.notice-own-insurer.text': paragraphs(
    greeting,
    'Damos aviso de un siniestro bajo nuestra póliza[ {policy}]: el {struckAt} un vehículo golpeó un bien nuestro, {hydrant}[ en {place}].[ Informe policial: {policeReport}.][ {driverLeft}] El costo hasta ahora es {total}.',
    'Díganos el número de reclamación, quién la lleva, y qué formulario y qué registros necesita. También reclamamos a quien sea responsable y le avisaremos de todo pago. Díganos antes de que lleguemos a un arreglo con alguien, si quiere ser oído.',
    call,
  ),
  'letter.later.restitution-statement.text': paragraphs(
    'El {struckAt} un vehículo golpeó {hydrant}[ en {place}], que pertenece a {utility}. Nuestras cuadrillas lo aseguraron y lo repararon.[ Informe policial: {policeReport}.]',
    'La pérdida, por clase de costo:\n{itemizedLoss}',
    '[De esto se han pagado {paid}.] Pedimos restitución de {balance}, a enviar con la reclamación {claimNumber} a:\n{remitTo}',
    'La relación de costos y los registros de cada renglón están en nuestro expediente, que se puede entregar. Se puede nombrar a quien conoce los registros.',
  ),
  'letter.later.release-checklist.text': paragraphs(
    'Para el archivo. Un finiquito termina derechos: nadie firma uno antes de que lo lea un abogado. Esta lista no es asesoría legal.',
    '[Oferta: {offer}.] Pedido: {asked}.[ Pagado: {paid}.] Saldo: {balance}.',
    'Para responder por escrito antes de que alguien firme:\n1. ¿Es correcto el importe y se descontó lo ya pagado?\n2. ¿Libera solo de este choque, por día y lugar, y solo de daños a la propiedad?\n3. ¿A quién libera, y queda alguien más que pueda deber una parte?\n4. ¿Pide que la empresa indemnice a alguien o devuelva dinero? Táchelo, o que lo acepte un abogado.\n5. ¿Ha pagado o puede pagar nuestra aseguradora? Debe aceptarlo antes.\n6. ¿Hay además una orden judicial de restitución?\n7. ¿Pide secreto? La ley de registros públicos puede no permitirlo.\n8. ¿Quién puede firmar por este importe y con qué autoridad?\n9. ¿Está aquí el dinero, y lo ha pagado el banco, antes de que salga el finiquito?',
  ),

  'letter.later.title': '{kind}, reclamación {claimNumber}',
  'letter.later.struck': 'Día del choque',
  'letter.later.reviewed': 'Revisado por',
  'letter.kind.demand': 'Petición de pago',
  'letter.kind.follow-up': 'Seguimiento',
  'letter.kind.reply-to-dispute': 'Respuesta a una disputa',
  'letter.kind.supplement': 'Suplemento',
  'letter.kind.final-notice': 'Último aviso',
  'letter.kind.payment-plan-offer': 'Oferta de un plan de pagos',
  'letter.kind.notice-own-insurer': 'Aviso a nuestra aseguradora',
  'letter.kind.release-checklist': 'Lista para revisar un finiquito',

  'letter.field.adjuster': 'Ajustador o contacto del pagador',
  'letter.field.demandedOn': 'Día de la primera petición',
  'letter.field.daysSinceDemand': 'Días desde la primera petición',
  'letter.field.asked': 'Pedido',
  'letter.field.paid': 'Pagado',
  'letter.field.balance': 'Saldo',
  'letter.field.writtenOff': 'Dado de baja',
  'letter.field.theirWords': 'Las palabras del pagador',
  'letter.field.reply': 'La respuesta, punto por punto',
  'letter.field.offer': 'Su oferta',
  'letter.field.instalments': 'Cuotas del plan',
  'letter.field.supplement': 'Lo que añade el suplemento',
  'letter.field.askedNow': 'Pedido con la última revisión',

  'letter.reply.whole': 'La petición entera',
  'letter.reply.point':
    '{number}. {what}. {known, select, yes {Usted no acepta {amount} de ello} other {Usted no lo acepta}}: {reason}.',
  'letter.reply.stands':
    'Se apoya en {records, plural, one {# registro hecho} other {# registros hechos}} durante el trabajo. {arithmetic}.',
  'letter.reply.authority':
    'Su tarifa: {title}, edición {edition}{page, select, none {} other {, página {page}}}.',
  'letter.reply.depreciation':
    'La pieza destruida es parte de una red en servicio; reponerla da a la ciudad un hidrante donde tenía uno, y nada más.',
  'letter.reply.betterment':
    'Lo instalado es lo que había, o lo más cercano que aún se fabrica; nada se mejoró a su costa.',
  'letter.reply.overhead': 'La tasa está adoptada y se aplica solo a la base que se imprime con ella.',
  'letter.reply.hours':
    'Las horas son de las personas nombradas, por día, desde la llegada hasta el fin del trabajo; se muestran las pagadas y las trabajadas.',
  'letter.reply.rate': 'La tarifa es la de la edición vigente el día que cuenta para ella.',
  'letter.reply.crew-size':
    'Cada persona tuvo una tarea que consta: el tráfico, la válvula, el izado, el apriete. Con menos no se trabaja con seguridad.',
  'letter.reply.equipment':
    'La máquina estuvo allí y en uso las horas indicadas; su tarifa no incluye operador, que se factura una vez y como mano de obra.',
  'letter.reply.materials': 'Las piezas son del modelo de este hidrante, al precio del vale o de la factura.',
  'letter.reply.water':
    'El agua es la cifra más baja que permite lo que se vio; cómo se calculó está en el expediente.',
  'letter.reply.duplicate':
    'Los dos registros difieren en hora o persona; ambos están en el expediente, con sus horas.',
  'letter.reply.no-evidence':
    'El registro que faltaba se adjunta, o se nombra aquí para que se pueda inspeccionar.',
  'letter.reply.liability':
    'El informe policial y las fotos muestran el vehículo en el hidrante. Si considera responsable a otro, díganos a quién y por qué; también le escribiremos.',
  'letter.reply.policy-limit':
    'Tomamos nota del límite. Confírmelo por escrito, para pedir el resto al conductor o al dueño.',
  'letter.reply.other': 'Vea los registros de este renglón.',

  'letter.authority.depreciation':
    'La regla federal para facturar trabajos de servicios públicos no descuenta depreciación acumulada de un tramo de una línea (23 CFR 645.117(h)(2)), y tribunales han concedido el costo completo de partes de una red (Horton v. Georgia Power, 1979; Duke Power v. Thornton, 1991).',
  'letter.authority.betterment':
    'La regla federal para facturar trabajos de servicios públicos no ve mejora en lo que es exigido, equivalente o el siguiente tamaño que se fabrica (23 CFR 645.117(h)(3)).',
  'letter.authority.overhead':
    'La regla federal para facturar trabajos de servicios públicos admite gastos generales sobre una base equitativa que muestre total, tasa y base (23 CFR 645.117(d)); en Curt’s Trucking v. Anchorage, 578 P.2d 975 (1978), se concedió el 13 por ciento.',
  'letter.authority.hours':
    'La regla federal para facturar trabajos de servicios públicos toma la mano de obra por tiempo trabajado, con registros (23 CFR 645.117(b)).',
  'letter.authority.rate':
    'La regla federal para facturar trabajos de servicios públicos toma tarifas reales o un promedio aprobado (23 CFR 645.117(b) y (c)).',
  'letter.authority.equipment':
    'La lista federal publicada de tarifas de equipo no incluye la mano de obra del operador.',
  'letter.authority.materials':
    'La regla federal para facturar trabajos de servicios públicos toma las existencias a su precio al salir, o si no al costo real entregado (23 CFR 645.117(e)(1)).',
  'letter.authority.no-evidence':
    'Lo que piden las reglas federales de costos son registros de los días y horas de cada persona (2 CFR 200.430(g)); aquí están.',
  'letter.authority.depreciation-here':
    'La regla de aquí no descuenta depreciación de lo que costó una pieza destruida de un sistema ({citation}).',
  'letter.depreciation-here':
    'Su configuración ({citation}; jurisdicción: {jurisdiction}) dice: {position, select, not_deducted {no se descuenta depreciación} deducted {los tribunales descuentan depreciación; la respuesta no invoca autoridad en contra} other {reposición menos depreciación; la respuesta no invoca autoridad en contra}}.{confirmed, select, yes {} other { Que un abogado lo confirme.}}',
  'letter.contrary.depreciation':
    'Las decisiones difieren: algunos tribunales descuentan depreciación (decisiones de Ohio), una ley limita la reclamación a la reposición menos depreciación (MCL 500.3121), y para una unidad entera el mismo 23 CFR 645.117(h)(2) acredita edad entre vida. Puede tener lista una contracuenta.',
  'letter.contrary.overhead':
    'La misma decisión negó el costo de tramitar la reclamación, y 18 CFR 101 no permite porcentajes arbitrarios. Sin tasa y base adoptadas esta respuesta es débil.',
  'letter.authorities-caution':
    'Las reglas federales nombradas obligan a quien factura bajo ellas y a ninguna aseguradora; a lo sumo convencen. Que un abogado lo confirme antes de apoyarse en ellas.',

  'letter.sent.title': 'Cartas aparte del expediente',
  'letter.sent.new': 'Escribir una carta',
  'letter.sent.kind': 'Clase de carta',
  'letter.sent.answers': 'A qué responde',
  'letter.sent.answers.none': 'A nada en particular',
  'letter.sent.text': 'Texto de la carta',
  'letter.sent.to': 'Nombre y dirección',
  'letter.sent.how': 'Cómo se envía',
  'letter.sent.on': 'Día de la carta',
  'letter.sent.record': 'Hacer el PDF y registrarla como enviada',
  'letter.sent.recording': 'Haciendo el PDF…',
  'letter.sent.recorded': 'Registrada. Descargue el PDF abajo y envíelo: desde aquí no se envía nada.',
  'letter.sent.open': 'Descargar el PDF',
  'letter.sent.reset': 'Empezar de nuevo desde la plantilla',
  'problem.letter-of-the-future':
    '{on} aún no ha llegado. Una carta lleva el día en que sale, a lo sumo hoy.',
  'problem.letter-recorded-otherwise':
    'Aquí ya se registró una carta del {on}, con otras palabras, otro día u otra dirección: la respuesta se perdió en el camino. La encuentra abajo. Pulse otra vez para registrar este texto como otra carta.',
  'problem.letter-unprintable':
    'La letra de la carta no tiene signo para {signs}: en el papel cada uno sería un signo de interrogación. Escríbalo con letras latinas o quítelo.',
  'problem.no-such-letter': 'No hay una carta de esta clase.',
};
