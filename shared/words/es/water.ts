import type { water as english } from '../en/water.ts';

export const water: Record<keyof typeof english, string> = {
  'hydraulics.card.hazen-williams': 'Pérdida por fricción en una tubería',
  'hydraulics.card.velocity-pressure': 'Presión debida a la velocidad del agua',
  'hydraulics.card.vertical-jet': 'Caudal de un chorro vertical',
  'hydraulics.card.rim-weir': 'Caudal sobre el borde de un tubo vertical',
  'hydraulics.card.horizontal-throw': 'Caudal de un chorro horizontal por su alcance',
  'hydraulics.card.hole-flow': 'Caudal por un orificio a presión',

  'hydraulics.history.title': 'Capacidad nominal a lo largo del tiempo',
  'hydraulics.history.title-of': 'Capacidad nominal de {subject} a lo largo del tiempo',
  'hydraulics.history.test': '{testedOn}: {capacity}, clase {hydrantClass}.',
  'hydraulics.history.none-rated': 'Ninguna prueba da una clasificación.',
  'hydraulics.history.loss':
    'La capacidad bajó un {percent} % desde el {since}, de {from} a {to}: más de lo que explican las lecturas.',
  'hydraulics.history.possible-loss':
    'La capacidad bajó un {percent} % desde el {since}, de {from} a {to}. Las lecturas podrían explicarlo ({chance} de seguridad de que bajó): repita la prueba con una caída mayor.',
  'hydraulics.history.steady': 'La capacidad es más o menos la del {since}: {from} entonces, {to} ahora.',
  'hydraulics.history.gain': 'La capacidad subió un {percent} % desde el {since}, de {from} a {to}.',
  'hydraulics.history.between': 'Por las lecturas, el cambio está entre {low} % y {high} %.',
  'hydraulics.history.pressure':
    'La estática es {change} menor y lo explica casi todo: pregunte a operaciones por bombas, depósitos y válvulas de zona.',
  'hydraulics.history.pipes':
    'La presión no lo explica: busque primero una válvula a medio cerrar y después depósitos en la tubería y el ramal.',
  'hydraulics.compute.flow-test-history.summary':
    'Las pruebas de un hidrante a lo largo del tiempo, pérdidas de capacidad, y antes y después de cada reparación.',
  'hydraulics.compute.flow-test-history.output':
    'tests, la más antigua primero, cada una con su answer, dudas y change respecto a la última que clasificó (frase, fracción, su intervalo, probabilidad de pérdida, veredicto: loss, possible-loss, steady o gain); sinceFirst, la última respecto a la primera; repairs con before, after y change; svg de la capacidad a lo largo del tiempo con su description.',

  'water.method.jet': 'la altura del chorro',
  'water.method.throw': 'el alcance del chorro',
  'water.method.opening': 'el tamaño de la abertura y la presión que hay detrás',
  'water.method.full-bore': 'el ramal y la tubería principal, abiertos a sección completa',
  'water.method.class': 'una palabra para la abertura, que nadie midió',
  'water.limit.flow-test':
    'la propia prueba de caudal del hidrante, prolongada hasta no dejar presión residual',
  'water.limit.model': 'el modelo de la red',
  'water.limit.frictionless': 'la sección del ramal sin fricción alguna',
  'water.figure.low': 'baja',
  'water.figure.best': 'más probable',
  'water.figure.high': 'alta',
  'water.figure.own': 'elegida',

  'water.said.valve-held': 'No se perdió agua: la válvula principal del hidrante aguantó.',
  'water.said.no-flow-seen': 'No se perdió agua: no se vio fluir ninguna.',
  'water.said.own-figure': 'Lo que se vio no da ninguna estimación.',
  'water.said.metered': 'Medida con contador: {best} (±{percent} %).',
  'water.said.flow': 'Según {method}: {best}, entre {low} y {high}{accuracy}.',
  'water.said.accuracy': ' (±{percent} %)',
  'water.said.limited': 'Limitado a {limit} por {by}.',
  'water.said.minutes': 'Fluyó durante {best}, {low} como mínimo y {high} como máximo.',
  'water.said.minutes-exact': 'Fluyó durante {best}.',
  'water.said.minutes-open': 'Fluyó durante {best}, {low} como mínimo; no se sabe cuánto como máximo.',
  'water.said.minute': '{minutes, plural, one {# minuto} other {# minutos}}',
  'water.said.gallons': 'Baja {low}, más probable {best}, alta {high}.',
  'water.said.gallons-open': 'Baja {low}, más probable {best}; no se sabe cuánto como máximo.',
  'water.said.claim': 'La reclamación usa la cifra {figure}, {claim}.',
  'water.said.reason': 'Motivo: {reason}',
  'water.said.used': 'Contado aparte: lavado {flushing}, pruebas de caudal {flowTest}.',

  'water.compute.water-lost.summary':
    'Agua perdida en un choque: baja, más probable y alta, según lo que se vio y cuánto duró.',
  'water.compute.water-lost.output':
    'basis en frases; by (valve-held, no-flow-seen, metered o flow-times-time); lowGal, bestGal, highGal (null si nadie sabe cuánto duró como máximo); flow con su método, extremos, exactitud y lo que lo limita; methods, todas las estimaciones del caudal; limits; minutes; used, agua de lavado y de pruebas de caudal; claim con la cifra usada; challenges con code, params y frase.',
  'water.compute.water-challenge.summary': 'Si un hidrante pudo dar tanta agua en ese tiempo.',
  'water.compute.water-challenge.output':
    'flowGpm que haría falta; limits, de menor a mayor; challenges con code, params y frase, ninguno si nada lo contradice.',
  'water.compute.formula.summary': 'Una fórmula por su ficha: ecuación, fuentes, resultado.',
  'water.compute.formula.output':
    'title; equation; resultGpm, resultPsi, resultFt o result; sources, cada una con cuánto se siguió; notes.',

  'tightening.ring-title': 'Orden de apriete, {bolts} pernos',
  'tightening.ring-description':
    'Numere los {bolts} pernos en el sentido del reloj desde arriba. Apriételos en este orden: {order}.',
  'tightening.ring-inside': 'en el perno: su turno',
  'tightening.ring-outside': 'al lado: su lugar',
  'tightening.number-bolts':
    'Numere los {bolts} pernos en el sentido del reloj, lubrique como diga el manual y arrímelos todos a mano.',
  'tightening.pass-cross':
    'Pasada {number}, {percent} %{torque, select, none {} other {, {torque}}}: {order}.',
  'tightening.pass-round':
    'Pasada {number}, una vuelta en el sentido del reloj al {percent} %{torque, select, none {} other {, {torque}}}, hasta que no gire ninguna tuerca.',
  'tightening.torque': 'Par {torque}, según {manual}, página {page}.',
  'tightening.torque-range': 'Par {torque} a {to}, según {manual}, página {page}.',
  'tightening.see-manual':
    'La ficha de este modelo no tiene par de apriete: consulte el manual del fabricante. Aquí no se supone ninguno.',
  'tightening.wrench': 'Una llave con ±{percent} % da entre {least} y {most}.',
  'tightening.turns-to': '{from} a {to}',
  'tightening.back-off':
    'Lleve la tuerca hasta el fondo y retrocédala {amount} de vuelta ({manual}, página {page}).',
  'tightening.back-off-lock':
    'Lleve la tuerca hasta el fondo y retrocédala {amount} de vuelta, hasta que su seguro encaje ({manual}, página {page}).',
  'tightening.compute.summary': 'Orden, pasadas y par de apriete de los pernos de una brida.',
  'tightening.compute.output':
    'steps en frases; bolts; order y groups de lugares, en el sentido del reloj desde 1; passes con share, pattern, torque en las dos unidades (null sin ficha: consulte el manual) y order; torque con su manual y página; wrench, lo que da su tolerancia; cautions; svg del anillo con su description.',
  'problem.bolts-not-even':
    'Solo hay patrón en cruz para un número par de pernos, y son {bolts}. Cuéntelos otra vez o consulte el manual del fabricante.',
  'problem.bolts-differ-from-record':
    'La ficha del modelo tiene {recorded} pernos en esta unión. Cuéntelos otra vez o corrija la ficha.',
  'problem.not-a-whole-number': 'Debe ser un número entero.',

  'network.node': 'nodo {nodeId}',
  'network.hydrant': 'hidrante {hydrantId} (nodo {nodeId})',
  'network.said.available': 'Según el modelo, {node} tiene {static} de estática y da {flow} a {residual}.',
  'network.said.nothing':
    'Según el modelo, {node} tiene {static} de estática, no más de {residual}: no hay caudal a esa presión residual.',
  'network.said.at-test': 'Con el caudal de la prueba de campo el modelo deja {pressure}.',
  'network.said.beyond-test': 'El modelo no puede dar el caudal de la prueba de campo.',
  'network.said.lowest':
    'La presión más baja en un cliente es entonces {pressure}, en el nodo {nodeId}; {count, plural, =0 {ninguno queda} one {# nodo queda} other {# nodos quedan}} por debajo de {residual}.',
  'network.said.field-agree':
    'Prueba de campo {field}, modelo {model}: dentro de lo que permiten las lecturas.',
  'network.said.field-model-higher':
    'Prueba de campo {field}, modelo {model}, un {percent} % más que lo medido: puede haber una válvula a medio cerrar, o las tuberías del modelo son demasiado lisas.',
  'network.said.field-model-lower':
    'Prueba de campo {field}, modelo {model}, un {percent} % menos que lo medido: al modelo le falta una tubería o una fuente, o sus tuberías son demasiado rugosas.',
  'network.said.closed': 'Con {links} cerrado:',
  'network.said.before-after': '{node}: {before} antes, {after} después.',
  'network.said.cut-off': '{node}: {before} antes, sin fuente alguna después.',
  'network.said.cut-off-count':
    '{count, plural, =0 {Ningún nodo con clientes queda} one {# nodo con clientes queda} other {# nodos con clientes quedan}} sin fuente.',
  'network.said.bound': 'Según el modelo no pueden salir más de {flow} en {node}.',
  'network.warning.unbalanced': 'El modelo no llegó al equilibrio: no se fíe de estas cifras.',
  'network.warning.unstable': 'La solución del modelo puede ser inestable: no se fíe de estas cifras.',
  'network.warning.disconnected': 'Una parte del modelo está sin fuente alguna.',
  'network.warning.pumps': 'En el modelo una bomba trabaja fuera de su curva.',
  'network.warning.valves': 'En el modelo una válvula no puede mantener su consigna.',
  'network.warning.negative-pressures':
    'El modelo tiene presiones negativas en algún punto: un caudal así aspiraría agua sucia y no debe probarse.',

  'network.compute.available-flow.summary':
    'Caudal a una presión residual según el modelo de la red, junto al de la prueba de campo.',
  'network.compute.available-flow.output':
    'said en frases; at, el nodo; staticPsi; flowGpm a residualPsi, 0 si la estática no la supera; atTestFlowPsi; lowest, la presión más baja en un cliente; watched, nodos antes y después; field, la prueba de campo al lado, o null; warnings del cálculo.',
  'network.compute.closing.summary':
    'Qué hace con la presión en los hidrantes cerrar tuberías o válvulas, según el modelo de la red.',
  'network.compute.closing.output':
    'said en frases; closed; watched, cada uno con beforePsi y afterPsi, null si queda sin fuente; cutOffNodes; warnings del cálculo.',
  'network.compute.water-bound.summary':
    'La mayor cantidad de agua que puede salir en un hidrante, según el modelo de la red.',
  'network.compute.water-bound.output':
    'said en frases; at; staticPsi; flowGpm al aire libre; warnings del cálculo.',

  'problem.place-needs-one':
    'Diga dónde: un nodo, un hidrante de la lista, una posición o un punto del mapa del modelo.',
  'problem.no-such-node': 'El modelo no tiene ningún nodo {nodeId}.',
  'problem.node-is-a-source': 'El nodo {nodeId} es un embalse o depósito. Nombre un nodo de la red.',
  'problem.no-such-link': 'El modelo no tiene ninguna tubería, bomba o válvula {linkId}.',
  'problem.no-node-near':
    'El nodo más cercano, {nodeId}, está a {distanceFt}; se admite como máximo {withinFt}. Revise la posición y el sistema de coordenadas del modelo.',
  'problem.model-needs-crs':
    'Diga en qué sistema de coordenadas está el mapa del modelo (map.crs), por ejemplo EPSG:2263.',
  'problem.model-has-no-map': 'Los nodos del modelo no tienen coordenadas. Nombre el nodo.',
  'problem.hydrant-not-in-model':
    'No hay ningún nodo anotado para el hidrante {hydrantId}. Añádalo a map.nodeOf, o indique el nodo o la posición.',
  'problem.link-opens-again':
    'Los controles del propio modelo vuelven a abrir {linkId} enseguida. Quítelo de los controles en una copia del modelo.',
  'problem.network-broken': 'EPANET no puede leer esta red: {detail}.',
  'problem.network-unsolved': 'EPANET pudo leer esta red pero no resolverla: {detail}.',
  'problem.network-empty':
    'En este archivo no hay ninguna red: no tiene nodos. Debe ser un archivo .inp de EPANET.',
  'problem.network-no-source': 'La red no tiene embalse ni depósito, así que nada la alimenta.',
  'problem.network-too-slow':
    'La red no se resolvió en {seconds} segundos y se detuvo. Revise sus pasos de tiempo y su duración, o pregunte por una hora anterior.',
  'problem.network-too-large': 'El archivo de la red supera {megabytes} MB.',

  'problem.start-of-flow-unknown':
    'Indique la hora del choque, o cuándo se avisó o se vio el agua por primera vez.',
  'problem.end-of-flow-unknown':
    'Indique la hora a la que se cortó el agua, o cuándo se la vio fluir por última vez.',
  'problem.seen-sound-after-call': 'No pudo verse intacto después del primer aviso. Revise las dos horas.',
  'problem.seen-shut-before-flowing':
    'No pudo verse cortada antes de verse fluir por última vez. Revise las dos horas.',
  'problem.shut-before-start': 'El agua se cortó antes de empezar a fluir. Revise las dos horas.',
  'problem.say-how-it-flowed':
    'Diga cómo fluía el agua (fuga, chorro o sección completa) y qué se vio de ella.',
  'problem.flow-needs-pressure':
    'Indique la presión de la tubería principal o la última prueba de caudal del hidrante; sin ninguna, solo la altura o el alcance de un chorro dan un caudal.',
  'problem.full-bore-needs-lateral':
    'Indique el tamaño y la longitud del ramal: a sección completa nada más frena el agua.',
  'problem.wet-barrel-no-main-valve':
    'Un hidrante de cuerpo húmedo no tiene válvula principal que aguante. Diga cómo fluía el agua.',
  'problem.flow-though-valve-held':
    'Se dice que la válvula principal aguantó y se vio fluir agua. Diga cuál de las dos cosas es cierta.',
  'problem.jet-needs-opening':
    'Indique el ancho de la abertura; una altura o un alcance solos no dan un caudal.',
  'problem.drop-without-throw': 'Indique hasta dónde llegó el chorro; solo lo que cayó no da un caudal.',
  'problem.water-not-of-estimate':
    'Esto no es lo que dan las observaciones registradas ({expectedGal}). Abra el formulario de nuevo y envíelo otra vez.',
  'problem.estimate-missing': 'Falta la estimación de estas observaciones. Abra el formulario de nuevo.',
  'problem.challenge-needs-answer':
    'La cifra está en duda. Cámbiela, o responda por su nombre: ¿cómo podría ser así a pesar de todo?',
  'problem.gallons-or-flow-and-minutes': 'Indique los galones, o el caudal y los minutos.',
  'problem.gallons-given-twice': 'Indique los galones o el caudal y los minutos, no ambos.',
  'problem.figure-needs-reason': 'La reclamación usa la cifra baja. Diga por qué es correcta otra.',
  'problem.own-figure-missing': 'Indique la cifra que debe usarse.',
  'problem.own-figure-not-chosen': 'Una cifra propia solo se usa si usted la elige.',
  'problem.no-high-figure':
    'No hay cifra alta: nadie sabe cuánto fluyó el agua como máximo. Indique cuándo se vio intacto el hidrante por última vez y cuándo se cortó el agua.',
  'problem.water-above-flow-test':
    '{waterGal} en {minutes} minutos son {flowGpm}. Según su propia prueba de caudal, este hidrante no da más de {limitGpm} sin presión alguna. Revise la cifra y las horas.',
  'problem.water-above-model':
    '{waterGal} en {minutes} minutos son {flowGpm}. Según el modelo de la red, este hidrante no da más de {limitGpm}. Revise la cifra y las horas.',
  'problem.water-above-frictionless':
    '{waterGal} en {minutes} minutos son {flowGpm}. Ningún hidrante en un ramal así puede dar más de {limitGpm}, ni sin fricción alguna. Revise la cifra y las horas.',
  'problem.water-above-full-bore':
    'Lo que se vio da {flowGpm}, pero el ramal abierto a sección completa deja pasar {limitGpm} como máximo. Revise la altura o el alcance y el ancho de la abertura.',
  'problem.methods-disagree':
    'Lo que se vio da dos caudales que no encajan: {oneGpm} y {otherGpm}. Se usa el primero. Revise la altura o el alcance, el ancho de la abertura y la presión.',
  'problem.claim-though-valve-held':
    'Se reclama agua aunque la válvula principal del hidrante aguantó. Una aseguradora lo objetará; no reclame ninguna o diga por qué.',
  'problem.metered-though-valve-held':
    'Un contador muestra agua perdida aunque se dice que la válvula principal del hidrante aguantó. Diga cuál de las dos cosas es cierta.',
};
