import type { network as english } from '../en/network.ts';

/** Spanish words: the utility's network model, on the screen and in the loading command. */
export const network: Record<keyof typeof english, string> = {
  'network.link': 'Lo que dice el modelo de la red',
  'network.title': 'Modelo de la red: {hydrantId}',
  'network.what-it-is':
    'Calculado con el modelo que el servicio tiene de sus tuberías. No es una medición: es tan cierto como lo eran las tuberías, válvulas y demandas del modelo en su fecha. Una prueba de campo vale más.',
  'network.private': 'Para el personal del servicio. No sale en ninguna página pública.',
  'network.facts.title': 'Qué modelo es',
  'network.facts.datedOn': 'Red al día',
  'network.facts.file': 'Archivo',
  'network.facts.loaded': 'Cargado',
  'network.facts.loaded-by': '{when} por {who} (edición {edition})',
  'network.facts.hour': 'Hora del reloj del modelo',
  'network.facts.demand': 'Todos los usuarios juntos a esa hora',
  'network.facts.size': 'Tamaño',
  'network.facts.size-of':
    '{nodes, plural, one {# nodo} other {# nodos}}, {links, plural, one {# enlace} other {# enlaces}}',
  'network.facts.node': 'Este hidrante en el modelo',
  'network.facts.node-near': 'nodo {nodeId}, a {distanceFt} de él en el mapa',
  'network.facts.node-named': 'nodo {nodeId}, según la lista del servicio',
  'network.flow.title': 'Caudal disponible',
  'network.flow.caption': 'El modelo junto a la última prueba de campo',
  'network.flow.model': 'Modelo',
  'network.flow.field': 'Prueba de campo',
  'network.flow.static': 'Presión estática',
  'network.flow.at-residual': 'Caudal a {residualPsi}',
  'network.flow.at-test': 'Presión con el caudal de la prueba, {flowGpm}',
  'network.flow.cannot': 'no puede dar ese caudal',
  'network.flow.none': 'nada',
  'network.flow.no-capacity': 'ninguno: la caída de presión de la prueba fue demasiado pequeña',
  'network.flow.other-residual': 'calculado a {residualPsi} en su lugar',
  'network.flow.tested': 'Prueba de campo del {when}.',
  'network.flow.no-test':
    'Este hidrante no tiene ninguna prueba de campo registrada, así que junto al modelo no hay nada medido.',
  'network.flow.lowest':
    'Mientras fluye, el usuario más bajo del modelo es el nodo {nodeId} con {pressurePsi}{count, plural, =0 {} one {; # nodo con usuarios queda por debajo de {residualPsi}} other {; # nodos con usuarios quedan por debajo de {residualPsi}}}.',
  'network.close.title': 'Cerrar tuberías o válvulas',
  'network.close.intro':
    'Elija lo que se cerraría. El modelo dice entonces qué presión habría aquí y en los hidrantes cercanos. No cierra nada: la válvula de la calle la encuentra, la gira y la registra la cuadrilla.',
  'network.close.choose': 'Cerrar',
  'network.close.more':
    '{count, plural, one {# más, más lejos por las tuberías} other {# más, más lejos por las tuberías}}',
  'network.close.pipe': 'Tubería {linkId}: {diameterIn}, {lengthFt} de largo',
  'network.close.valve': 'Válvula {linkId}: {diameterIn}',
  'network.close.pump': 'Bomba {linkId}',
  'network.close.where': 'entre {from} y {to}; empieza a {alongFt} siguiendo las tuberías',
  'network.close.where-here': 'entre {from} y {to}; en este hidrante',
  'network.close.shut-already': 'ya cerrada en el modelo',
  'network.close.show': 'Mostrar las presiones',
  'network.close.nothing-chosen': 'Elija al menos una tubería o válvula que cerrar.',
  'network.close.asking': 'Resolviendo la red…',
  'network.close.closed': 'Con {links} cerrado',
  'network.close.hydrant': 'Hidrante',
  'network.close.before': 'Antes',
  'network.close.after': 'Después',
  'network.close.this': 'este hidrante',
  'network.close.away': 'a {distanceFt}',
  'network.close.cut-off': 'sin agua: separado de toda fuente',
  'network.close.cut-off-count':
    '{count, plural, =0 {Ningún usuario del modelo queda separado.} one {# nodo con usuarios del modelo queda separado.} other {# nodos con usuarios del modelo quedan separados.}}',
  'network.close.not-in-model': 'No están en el modelo, así que aquí no se sabe nada de ellos:',
  'network.lost.title': 'Límite superior del agua perdida',
  'network.lost.flow':
    'Con el barril abierto al aire este hidrante no da más de {flowGpm} según el modelo{through, select, lateral {, por su propio ramal tomado como nuevo y liso} other {; no se conoce su ramal, que dejaría pasar menos}}.',
  'network.lost.bound':
    'Puede haber corrido {minutes} minutos como máximo, así que no se pueden haber perdido más de {boundGal}.',
  'network.lost.held': 'La válvula principal aguantó: no salió nada, diga lo que diga el modelo.',
  'network.lost.open': 'Todavía no se puede dar un límite en volumen:',
  'network.lost.not-a-claim': 'Es un límite contra cifras demasiado altas, no la cifra que se cobra.',
  'network.failed.try': 'Intentar de nuevo',
  'network.doubts': 'Lo que el cálculo pone en duda',

  'problem.no-network-model':
    'No hay ningún modelo de la red cargado. Quien administra este sistema puede cargar el archivo EPANET del servicio con «npm run network».',
  'problem.network-island':
    '{count, plural, one {# nodo no está unido} other {# nodos no están unidos}} a ningún embalse ni tanque, así que la red no se puede resolver: {nodes}{count, plural, =1 {} =2 {} =3 {} =4 {} =5 {} other { y más}}. Únalos o quítelos.',
  'problem.hydrant-has-no-node':
    'El modelo de la red no nombra ningún nodo para el hidrante {hydrantId}. Quien carga el modelo puede añadirlo a su lista.',
  'problem.model-file-or-text':
    'Dé el modelo o bien como modelFile (una ruta) o bien como modelText (el archivo mismo).',
  'problem.strike-of-another-hydrant':
    'Este choque fue del hidrante {hydrantId}, no de este. Abra el modelo desde el propio choque.',
  'problem.start-of-flow-open':
    'Nadie registró cuándo se vio el hidrante sano por última vez, así que no se sabe cuánto tiempo corrió.',

  'network.command.help': `npm run network -- ARCHIVO.inp --dated AAAA-MM-DD [opciones]

Carga el modelo de la red del servicio (un archivo de entrada de EPANET). Es privado: cuadrillas, administrativos y
responsables pueden hacerle preguntas; no sale en ninguna página pública.

  --dated AAAA-MM-DD  el día cuya red describe el archivo; solo lo sabe quien lo hizo
  --crs EPSG:2263     el sistema de coordenadas del mapa del archivo, para encontrar el nodo de cada hidrante
  --nodes LISTA.csv   una lista «hydrantId,nodeId» que lo dice por nombre; vale más que el mapa
  --within PIES       un nodo más lejos del hidrante no es el suyo (300)
  --hour HORA         hora del reloj del modelo a la que se lee (0)
  --by NOMBRE         quién lo carga; si no, la cuenta de esta máquina
  --dry-run           lee, informa y no escribe nada
  --lang en|es        idioma de este informe

Necesita --crs o --nodes. NETWORK_URL=s3://BUCKET/ carga en el depósito de un despliegue, INVENTORY_URL=s3://BUCKET/
nombra su inventario; sin ellos es la carpeta de datos de esta máquina.`,
  'network.command.file':
    '{file}: {nodes, plural, one {# nodo} other {# nodos}}, {links, plural, one {# enlace} other {# enlaces}}, pérdidas por {headloss, select, hazenwilliams {Hazen-Williams} darcyweisbach {Darcy-Weisbach} other {Chezy-Manning}}',
  'network.command.hour': 'A la hora {hour} de su reloj los usuarios toman juntos {demandGpm}.',
  'network.command.doubtful': 'Dudoso:',
  'network.command.matched': 'Hidrantes: {found} de {count} tienen un nodo.',
  'network.command.distances':
    'Por el mapa: {count}; la mitad a menos de {medianFt}, nueve de diez a menos de {ninthFt}, el más lejano a {mostFt} ({hydrantId}).',
  'network.command.listed': 'Por la lista: {count}.',
  'network.command.unmatched': 'Sin nodo: {count}. Los primeros:',
  'network.command.no-inventory':
    'No hay inventario cargado, así que no se sabe qué hidrantes tienen un nodo. Se buscan cuando alguien pregunta.',
  'network.command.dry-run': 'Ensayo: no se escribió nada.',
  'network.command.loaded': 'En vigor como edición {edition}, con fecha {datedOn}.',
  'network.doubt.no-demand':
    'Nadie toma agua a esa hora, así que sus presiones son más altas que las de cualquier día.',
  'network.doubt.hour': 'Su reloj termina en la hora {hour}; se lee ahí y no a la hora {asked}.',
  'network.doubt.negative':
    '{count, plural, one {# nodo tiene} other {# nodos tienen}} a esa hora una presión bajo cero, que ninguna red tiene.',
  'network.doubt.unfed': 'A {count, plural, one {# nodo} other {# nodos}} no llega ningún embalse ni tanque.',
  'network.doubt.no-map':
    '{count, plural, one {# nodo no tiene} other {# nodos no tienen}} lugar en el mapa del archivo.',
  'network.doubt.few-hydrants':
    'Menos de la mitad de los hidrantes encontraron un nodo. Revise --crs y --within, o dé una lista con --nodes.',
  'network.doubt.shared':
    '{count, plural, one {# nodo representa} other {# nodos representan}} a más de un hidrante; esos hidrantes reciben la misma respuesta (el que más: {nodeId}, {most} hidrantes).',
  'network.doubt.listed-unknown': 'La lista nombra hidrantes que el inventario no tiene: {examples}.',

  'problem.network-option-unknown': '{option} no es una opción de este comando. --help las enumera.',
  'problem.network-option-needs-value': '{option} necesita un valor.',
  'problem.network-no-file':
    'Nombre el archivo EPANET que se carga, por ejemplo: npm run network -- town.inp --dated 2026-01-15',
  'problem.network-one-file': 'Nombre un solo archivo.',
  'problem.network-file-not-found': 'No hay ningún archivo {file} que se pueda leer.',
  'problem.network-needs-date':
    'Diga con --dated de qué día es la red que describe el archivo, como AAAA-MM-DD. Figura junto a cada cifra.',
  'problem.network-date-wrong': '«{value}» no es una fecha. Escríbala como AAAA-MM-DD.',
  'problem.network-number-wrong': '«{value}» no es un número entre {minimum} y {maximum}.',
  'problem.network-needs-rule':
    'Diga cómo encuentran los hidrantes su nodo: --crs con el sistema de coordenadas del mapa del archivo, o --nodes con una lista de hidrantes y nodos.',
  'problem.network-list-wrong': 'La línea {line} de la lista no es «hydrantId,nodeId»: {text}',
  'problem.network-list-twice':
    'La línea {line} de la lista nombra otra vez el hidrante {hydrantId} con otro nodo.',
  'problem.network-list-no-node': 'Línea {line} de la lista: el modelo no tiene ningún nodo {nodeId}.',
  'problem.network-none-found':
    'Ningún hidrante del inventario tiene un nodo en este modelo, así que nadie podría preguntarle nada. Revise --crs, --within y --nodes.',
};
