import type { layers as english } from '../en/layers.ts';

/** Palabras en español: capas (calles, lugares que cubrir, áreas de estaciones) y su carga. */
export const layers: Record<keyof typeof english, string> = {
  'layers.help': `npm run layers -- ARCHIVO --as streets | addresses | stations [opciones]

Lee un archivo GeoJSON, dice de cada objeto qué se hizo de él y pone la capa en vigor. Las páginas públicas la usan
desde su próxima publicación. docs/layers-geojson.md dice qué debe contener cada clase.

  --crs EPSG:2263        el sistema de las coordenadas, si no están en grados en WGS 84
  --snap PIES            calles: a qué distancia de una calle puede estar un hidrante o una dirección (300)
  --join-crossings       calles: las que se cruzan sin una posición común se unen
  --join-within PIES     calles: un extremo que queda así de cerca de otra calle se une a ella (0: nunca)
  --name PROPIEDAD       estaciones: la propiedad que contiene el nombre
  --report ARCHIVO.csv   escribe cada hallazgo en un archivo
  --dry-run              lee e informa, y no escribe nada
  --take-out             retira la capa de esta clase (sin ARCHIVO)
  --by NOMBRE            quién la carga
  --lang en | es         idioma de este comando

INVENTORY_URL=s3://BUCKET/ carga en el bucket de un despliegue, junto a su inventario; sin ella, la capa va a la carpeta
de datos de esta máquina.`,
  'layers.file':
    '{file}: {kind, select, streets {calles} addresses {lugares que deben estar cubiertos} other {áreas de estaciones}}, coordenadas en {crs}',
  'layers.counts':
    '{features, plural, one {# objeto} other {# objetos}}: {accepted, number} aceptados ({doubtful, number} dudosos), {rejected, number} rechazados',
  'layers.level.rejected': '{count, plural, one {Rechazado, # vez} other {Rechazado, # veces}}:',
  'layers.level.doubt': '{count, plural, one {Dudoso, # vez} other {Dudoso, # veces}}:',
  'layers.where':
    '{featureId, select, none {objeto {row, number} (línea {line, number})} other {objeto {row, number}, {featureId} (línea {line, number})}}',
  'layers.more': '{count, plural, one {y # más} other {y # más}} (--report ARCHIVO.csv los tiene todos)',
  'layers.report-written': 'Todos los hallazgos están en {file}.',
  'layers.dry-run': 'No se escribió nada (--dry-run).',
  'layers.loaded':
    'En vigor: {kind, select, streets {calles} addresses {lugares que deben estar cubiertos} other {áreas de estaciones}}, edición {edition, number}. Las páginas públicas la usan desde su próxima publicación.',
  'layers.taken-out':
    'Retirada: {kind, select, streets {calles} addresses {lugares que deben estar cubiertos} other {áreas de estaciones}}, edición {edition, number}.',
  'layers.column.level': 'nivel',
  'layers.column.feature': 'objeto',
  'layers.column.line': 'línea',
  'layers.column.id': 'id',
  'layers.column.field': 'campo',
  'layers.column.reason': 'motivo',
  'layers.column.sentence': 'frase',

  'problem.layers-option-unknown': 'No hay ninguna opción {option}. --help las enumera.',
  'problem.layers-option-needs-value': 'Diga cuál: {option} {form}',
  'problem.layers-as-what':
    'Diga qué contiene el archivo: --as streets, --as addresses o --as stations{value, select, none {} other { (no «{value}»)}}.',
  'problem.layers-option-of-other-kind': '{option} es para --as {only}, y esto es --as {kind}.',
  'problem.layers-file-and-take-out': 'Para retirar una capa, no nombre ningún archivo.',
  'problem.layers-no-file': 'Nombre el archivo: npm run layers -- ARCHIVO.geojson --as streets',
  'problem.layers-one-file': 'Un archivo a la vez.',
  'problem.layers-number-wrong': '{option} lleva un número de pies de {minimum} a {maximum}, no «{value}».',
  'problem.layers-none-in-force': 'No hay ninguna capa de {kind} en vigor.',

  'problem.layers-not-geojson': 'Las capas se leen de GeoJSON (RFC 7946). Exporte la capa así.',
  'problem.layers-no-features':
    'El archivo es JSON pero no tiene una lista «features». Expórtelo como una FeatureCollection de GeoJSON.',
  'problem.layers-empty':
    'La lista de objetos está vacía. Expórtela de nuevo y mire que no haya ningún filtro.',
  'problem.layers-too-many-features':
    'El archivo tiene más de {most, number} objetos. Recórtelo a su propia área.',
  'problem.layers-none-accepted':
    'No se puede tomar ningún objeto del archivo. Arriba se dice de cada uno el motivo.',
  'problem.layers-no-name-field':
    'Ninguna propiedad parece el nombre de una estación. Diga cuál: --name PROPIEDAD. El archivo tiene: {has}',
  'problem.layers-name-field-missing': 'Ningún objeto tiene una propiedad «{field}». El archivo tiene: {has}',
  'problem.layers-too-many-stations': 'El archivo tiene más de {most, number} áreas.',
  'problem.layers-nowhere-near':
    'Nada del archivo está a menos de 2 millas de un hidrante del inventario (el primer lugar es {latitude}, {longitude}). O es de otra ciudad, o sus coordenadas están en otro sistema: indíquelo con --crs.',

  'problem.layers-streets-made':
    '{streets, plural, one {# calle} other {# calles}} entre {places, plural, one {# lugar} other {# lugares}} donde las calles se encuentran o terminan.',
  'problem.layers-crossings-open':
    '{count, plural, one {# cruce no tiene} other {# cruces no tienen}} una posición que ambas calles compartan, y no {count, plural, one {se une} other {se unen}}: un puente, o un archivo que no está cortado en sus cruces. --join-crossings une todos los que están a un mismo nivel.',
  'problem.layers-crossings-joined':
    '{count, plural, one {# cruce} other {# cruces}} sin posición común, unidos como pidió.',
  'problem.layers-ends-open':
    '{count, plural, one {# extremo queda} other {# extremos quedan}} a menos de {feet} pies de una calle y no {count, plural, one {se une} other {se unen}} a ella. --join-within {feet} los une.',
  'problem.layers-ends-joined':
    '{count, plural, one {# extremo} other {# extremos}} a menos de {feet} pies de una calle, unidos a ella como pidió.',
  'problem.layers-parts':
    'La red se divide en {count, number} partes sin camino entre ellas; la mayor tiene el {percent} % de las calles. A nadie se le lleva de una parte a otra.',
  'problem.layers-places-made':
    '{places, plural, one {# lugar que debe estar cubierto} other {# lugares que deben estar cubiertos}}.',
  'problem.layers-places-shared':
    '{count, plural, one {# objeto está} other {# objetos están}} donde ya hay otro y {count, plural, one {cuenta} other {cuentan}} una sola vez con él.',
  'problem.layers-names-from':
    '{count, plural, one {# área} other {# áreas}}, con nombre de la propiedad «{field}».',
  'problem.layers-no-inventory-yet':
    'No hay inventario cargado, así que nadie miró si la capa está donde están los hidrantes.',
  'problem.layers-some-far':
    'El {percent} % está a más de 2 millas de todos los hidrantes. Mire si el archivo es de su propia área.',
  'problem.layers-hydrants-on-streets':
    '{on, number} de {count, number} hidrantes están a menos de {feet} pies de una calle{examples, select, none {.} other {; no {examples}. Las distancias a los demás son en línea recta.}}',
  'problem.layers-hydrants-in-areas':
    '{inside, number} de {count, number} hidrantes están en un área{examples, select, none {} other {; no {examples}}}.',
  'problem.layers-areas-overlap':
    '{count, plural, one {# hidrante está} other {# hidrantes están}} en dos áreas o más ({examples}), y {count, plural, one {aparece} other {aparecen}} en la página de cada una.',

  'problem.layers-broken-feature': 'Esto no es un objeto de GeoJSON: {detail}',
  'problem.layers-no-geometry': 'No tiene geometría.',
  'problem.layers-wrong-geometry': 'Es un {type}. Hace falta un {wanted} o Multi{wanted}.',
  'problem.layers-no-positions': 'Aquí hace falta una lista de posiciones, no {value}.',
  'problem.layers-not-a-position': 'Una posición son dos números, longitud y latitud, no {value}.',
  'problem.layers-not-in-degrees':
    'Esto no es una longitud y una latitud en grados: {value}. Si el archivo está en otro sistema, indíquelo con --crs.',
  'problem.layers-at-zero': 'Está en 0, 0, que es como se ven las coordenadas que faltan.',
  'problem.layers-outside-area': '{value} no está en el área para la que es {crs}.',
  'problem.layers-too-few-positions':
    'Aquí hacen falta {least, number} posiciones, y {count, plural, one {hay #} other {hay #}}.',
  'problem.layers-no-length': 'La línea empieza y termina en un mismo lugar y no tiene nada entre medias.',
  'problem.layers-date-line':
    'Cruza la línea de cambio de fecha. RFC 7946 pide que una geometría así se corte allí.',
  'problem.layers-not-a-street': 'Por su etiqueta «{tag}» no es una calle.',
  'problem.layers-not-built': 'Todavía no existe o ya no existe ({value}).',
  'problem.layers-motorway': 'Por una {value} nadie camina ni tiende manguera.',
  'problem.layers-ring-open': 'La última posición de un anillo debe ser igual a la primera.',
  'problem.layers-ring-crosses':
    'El anillo se cruza consigo mismo cerca de {latitude}, {longitude}, así que nadie puede decir qué queda dentro. Corríjalo y expórtelo de nuevo.',
  'problem.layers-no-name': 'Aquí no tiene nombre. El nombre es el de su página.',
  'problem.layers-name-too-long':
    'Un nombre tiene como mucho {most, number} caracteres; este tiene {length, number}.',
  'problem.layers-name-not-usable':
    'Con el nombre se hace una dirección, y «{name}» no tiene ninguna letra de la a a la z ni ninguna cifra.',
  'problem.layers-same-address':
    'La dirección de su página sería la de «{other}». Dé a una de las dos otro nombre que «{name}».',
  'problem.layers-long-step':
    'Dos posiciones seguidas están a {feet, number} pies una de otra. Mire si una de ellas está mal.',
  'problem.layers-same-name':
    'Otro objeto también se llama «{name}». Los dos son una sola área en dos partes.',
  'problem.layers-end-near-street':
    'Termina junto a la calle del objeto {other, number} sin unirse a ella, en {latitude}, {longitude}.',
  'problem.layers-crosses-unjoined':
    'Cruza la calle del objeto {other, number} sin una posición común, en {latitude}, {longitude}: se toma por un puente.',
};
