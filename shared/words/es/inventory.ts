import type { inventory as english } from '../en/inventory.ts';

/** Spanish words: the inventory, its import and the nearest hydrants. */
export const inventory: Record<keyof typeof english, string> = {
  'bearing.N': 'norte',
  'bearing.NE': 'noreste',
  'bearing.E': 'este',
  'bearing.SE': 'sureste',
  'bearing.S': 'sur',
  'bearing.SW': 'suroeste',
  'bearing.W': 'oeste',
  'bearing.NW': 'noroeste',

  'problem.inventory-empty':
    'El archivo no contiene filas. Expórtelo de nuevo y compruebe que no esté vacío.',
  'problem.inventory-format-unknown':
    'No es un archivo CSV, GeoJSON ni OSM XML. Exporte los hidrantes en uno de estos formatos.',
  'problem.inventory-is-zip':
    'Es un archivo ZIP (una hoja de cálculo o un shapefile comprimido). Guarde la hoja como CSV o exporte la capa como GeoJSON.',
  'problem.inventory-is-database':
    'Es un archivo de base de datos. Exporte su capa de hidrantes como GeoJSON o CSV.',
  'problem.inventory-is-shapefile':
    'Es un shapefile. Exporte la capa como GeoJSON (en WGS 84) o como CSV con sus coordenadas.',
  'problem.inventory-is-old-spreadsheet':
    'Es una hoja de cálculo en un formato binario antiguo. Guarde la hoja como CSV.',
  'problem.inventory-no-delimiter':
    'La primera línea no se divide en columnas con coma, punto y coma, tabulador ni barra. Exporte como CSV con una línea de títulos.',
  'problem.inventory-no-header':
    'La línea {line} parece datos y no nombres de columnas. Ponga encima una línea de títulos.',
  'problem.inventory-quote-never-closed':
    'Una comilla abierta en la línea {line} no se cierra, y las líneas que siguen se leen como un solo campo. No se tomó nada. Ciérrela o quítela.',
  'problem.inventory-not-json':
    'Cerca de la línea {line} el archivo no es JSON, o no es una lista de elementos: {detail}',
  'problem.inventory-json-cut-off':
    'El archivo termina en la línea {line} en medio de sus datos. Descárguelo o expórtelo de nuevo.',
  'problem.inventory-record-never-closed':
    'El registro que empieza cerca de la línea {line} no termina: falta un corchete o una comilla.',
  'problem.inventory-no-features':
    'El archivo es JSON pero no tiene lista de «features». Expórtelo como FeatureCollection de GeoJSON.',
  'problem.inventory-not-xml': 'El archivo deja de ser XML en la línea {line}: {detail}',
  'problem.inventory-xml-not-osm':
    'El archivo es XML del tipo «{element}». Solo se lee OSM XML; exporte la capa como GeoJSON.',
  'problem.inventory-too-many-rows':
    'El archivo contiene más de {most} filas. Redúzcalo a sus propios hidrantes.',
  'problem.inventory-none-accepted':
    'Ninguna fila del archivo pudo usarse; las razones están arriba. El inventario vigente no cambia.',
  'problem.inventory-shrinks':
    'El archivo da {count} hidrantes y el inventario vigente tiene {current}. Si los demás de verdad ya no existen, repita la importación con --allow-fewer. El inventario vigente no cambia.',
  'problem.inventory-older-edition':
    'Ya está vigente un inventario cargado después ({editionAt}), y uno anterior nunca reemplaza a uno posterior. No se cambió nada.',

  'problem.inventory-no-coordinate-columns':
    'Ninguna columna parece tener coordenadas. Nómbrelas: --map latitudeDeg=COLUMNA --map longitudeDeg=COLUMNA. Las columnas son: {columns}.',
  'problem.inventory-no-numbers-for-coordinates': 'Las columnas de coordenadas no contienen números.',
  'problem.inventory-no-such-column': 'No hay una columna «{column}». Las columnas son: {columns}.',
  'problem.inventory-projected':
    'Las coordenadas no son grados (x {xFrom} a {xTo}, y {yFrom} a {yTo}): están proyectadas. Diga en qué sistema, con --crs EPSG:CÓDIGO. El código está en las propiedades de la capa o en su archivo .prj. No se adivina, porque un error pequeño pone todos los hidrantes en otro lugar.',
  'problem.inventory-already-degrees':
    'Usted indicó {crs}, pero las coordenadas son grados (x {xFrom} a {xTo}, y {yFrom} a {yTo}). Quite --crs o asigne las columnas proyectadas.',
  'problem.inventory-axes-swapped':
    'La latitud y la longitud están al revés (x {xFrom, number, ::.####} a {xTo, number, ::.####}, y {yFrom, number, ::.####} a {yTo, number, ::.####}). GeoJSON lleva primero la longitud: exporte el archivo de nuevo. Las columnas de una tabla se pueden nombrar: --map latitudeDeg=COLUMNA --map longitudeDeg=COLUMNA.',
  'problem.inventory-outside-area':
    'En {crs} los hidrantes estarían cerca de {latitude}, {longitude}, fuera de donde se usa ese sistema ({area}). Indique el sistema en que de verdad está el archivo.',
  'problem.inventory-crs-unknown':
    '«{value}» no está en la lista que trae este programa. Dé su definición: --crs "+proj=… +datum=… +units=…". Está junto al código en el registro que lo definió.',
  'problem.inventory-crs-not-readable': 'La definición «{value}» no puede usarse: {detail}.',
  'problem.inventory-datum-not-stated':
    '{value} usa un datum antiguo y no se indica cómo se desplaza a WGS 84. Adivinarlo puede mover todos los hidrantes 200 m. Convierta el archivo a WGS 84 en su SIG o dé una definición con sus parámetros +towgs84=….',
  'problem.inventory-crs-overrides-file':
    'El archivo dice que sus coordenadas están en {file}; se leyeron en {crs}, como usted indicó.',
  'problem.inventory-datum-assumed':
    'El archivo no dice en qué datum están sus grados. Se tomaron como WGS 84 (NAD 83 difiere menos de 2 m). Los grados en un datum antiguo como NAD 27 pueden estar a 200 m: compruebe un hidrante en el mapa.',

  'problem.inventory-no-id-column':
    'Ninguna columna parece el número del hidrante. Si la hay, nómbrela: --map hydrantId=COLUMNA. Si no, cada hidrante se nombra por su lugar.',
  'problem.inventory-no-id-column-source':
    'Ninguna columna parece el número del hidrante. Si la hay, nómbrela: --map hydrantId=COLUMNA. Si no, cada hidrante se nombra por el número de su registro.',
  'problem.inventory-not-what-it-says':
    'se llama como {field}, pero sus valores no lo son ({examples}); no se usó. Para usarla de todos modos: --map {field}="{column}"',
  'problem.inventory-unit-not-shown':
    'parece {field}, pero nada indica su unidad ({examples}); no se usó. Indíquela: --unit {field}=in, mm, ft o tenth-in',
  'problem.inventory-maker-not-kept': 'el fabricante; se guarda en la ficha del modelo, no aquí',
  'problem.inventory-make-year-not-install':
    'cuándo se fabricó, que no es cuándo se instaló. Para tomarlo así: --map installedOn="{column}"',

  'problem.inventory-not-utf8':
    'El archivo no está en UTF-8. Se leyó como Windows-1252 (Latin-1): compruebe que los nombres con acentos estén bien, como «{example}».',
  'problem.inventory-blank-lines':
    'Se pasaron por alto {count, plural, one {# línea en blanco} other {# líneas en blanco}}.',
  'problem.inventory-other-elements':
    'Se pasaron por alto {count, plural, one {# elemento que no es punto con etiquetas} other {# elementos que no son puntos con etiquetas}} (vértices de vías, vías, relaciones).',

  'problem.inventory-too-many-columns':
    '{found} campos para {expected} nombres de columna: un separador dentro de un campo corrió los demás. Ponga ese campo entre comillas.',
  'problem.inventory-broken-feature': 'no se puede leer: {detail}',
  'problem.inventory-not-a-point': 'es {geometry}, no un punto.',
  'problem.inventory-no-coordinates': 'no tiene coordenadas.',
  'problem.inventory-not-a-coordinate': 'estas coordenadas no son números.',
  'problem.inventory-at-zero': 'está en 0, 0, que es lo que deja un formulario vacío.',
  'problem.inventory-not-in-degrees':
    'estas coordenadas no son grados, como las del resto del archivo. Convierta esta fila.',
  'problem.inventory-latitude-range':
    'tiene la latitud {latitude, number, ::.######}: la latitud va de −90 a 90.',
  'problem.inventory-longitude-range':
    'tiene la longitud {longitude, number, ::.######}: la longitud va de −180 a 180.',
  'problem.inventory-row-outside-area':
    'cae en {latitude}, {longitude}, donde no puede haber un hidrante de {crs}.',
  'problem.inventory-swapped-axes':
    'la latitud y la longitud parecen intercambiadas; al revés está en {latitude}, {longitude}. Corríjalo en el origen o tómelo así con --accept swapped-axes.',
  'problem.inventory-not-a-hydrant': 'no es un hidrante.',
  'problem.inventory-deleted-asset': 'el origen dice que ya no existe.',
  'problem.inventory-duplicate-row':
    'es igual {kind, select, feature {al elemento} other {a la línea}} {first} en todo menos en su número de registro.',
  'problem.inventory-duplicate-id-same-place':
    'tiene el número y el lugar {kind, select, feature {del elemento} other {de la línea}} {first}, pero otros valores. Se conservó {kind, select, feature {el elemento} other {la línea}} {first}.',
  'problem.inventory-duplicate-place':
    'no tiene número y está exactamente donde {kind, select, feature {el elemento} other {la línea}} {first}. Se conservó {kind, select, feature {el elemento} other {la línea}} {first}.',
  'problem.inventory-breaks-schema': 'no se puede guardar: {detail}',

  'problem.inventory-too-few-columns':
    '{found} campos para {expected} nombres de columna; los que faltan se tomaron como vacíos.',
  'problem.inventory-swapped-axes-taken':
    'la latitud y la longitud se intercambiaron, como usted indicó; está en {latitude}, {longitude}.',
  'problem.inventory-far-from-rest':
    'está a {miles} millas del centro de todos los demás. Se conservó; compruebe sus coordenadas.',
  'problem.inventory-same-place':
    'está en el mismo punto que el hidrante {other}. Se conservaron ambos; uno puede estar mal ubicado.',
  'problem.inventory-duplicate-id':
    'es el número de {rows} filas en lugares distintos. Cada una se conservó con un número propio; esta es ahora «{given}».',
  'problem.inventory-duplicate-id-first':
    'es el número de {rows} filas en un mismo lugar. Se conservó esta, la primera.',
  'problem.inventory-duplicate-place-first':
    'está exactamente donde {kind, select, feature {el elemento} other {la línea}} {other}. Se conservó esta, la primera.',
  'problem.inventory-placeholder-id':
    '{rows, plural, one {es un relleno, no un número} other {está en # filas, así que no es un número}}. Se le dio el número «{given}».',
  'problem.inventory-odd-id':
    'contiene más que un número, a diferencia de los demás. Se conservó así; si una parte es una observación, pásela a otra columna antes de que la gente lo use.',
  'problem.inventory-id-not-usable':
    'es demasiado largo para un número o contiene caracteres de control. Se le dio el número «{given}».',
  'problem.inventory-says-out-of-service':
    'el origen dice fuera de servicio. Se conserva como inactivo y nunca se ofrece como el hidrante más cercano.',
  'problem.inventory-abandoned':
    'el origen dice abandonado. Se conserva como abandonado y nunca se ofrece como el hidrante más cercano.',
  'problem.inventory-planned':
    'el origen dice planeado. Se conserva como planeado y nunca se ofrece como el hidrante más cercano.',
  'problem.inventory-perhaps-blow-off':
    'puede ser una purga y no un hidrante contra incendios. Se conservó; quítelo del origen si no es para incendios.',
  'problem.inventory-not-for-fire':
    'la observación dice que no es para incendios. Se conservó; márquelo inactivo en el origen si es así.',
  'problem.inventory-perhaps-gone':
    'la observación dice que ya no existe. Se conservó; quítelo del origen si es así.',
  'problem.inventory-place-uncertain':
    'la observación dice que su lugar es incierto. Se conservó; compruébelo en el mapa.',
  'problem.inventory-not-from-main':
    'su agua no viene de una tubería principal: es un punto de succión, sin presión propia. Se conservó; quítelo del origen si no le corresponde.',
  'problem.inventory-unknown-word': 'no es una palabra conocida aquí; se tomó como desconocido.',
  'problem.inventory-not-a-number': 'no es un número. Se omitió.',
  'problem.inventory-unknown-unit': '«{unit}» no es una unidad conocida aquí. Se omitió.',
  'problem.inventory-unit-missing':
    'no tiene unidad, y los demás de la columna están en {units}. Se omitió. Indique la unidad de los números solos con --unit {field}=UNIDAD.',
  'problem.inventory-mixed-units':
    'está en {unit} ({converted} {target}), pero casi toda la columna está en {usual}, donde el mismo número también serviría. Se omitió. Para tomar estos valores como están escritos: --accept mixed-units.',
  'problem.inventory-mixed-units-taken':
    'está en {unit}, a diferencia de casi toda la columna ({usual}); se tomó como está escrito, {converted} {target}.',
  'problem.inventory-unit-unlikely':
    'como {unit}, igual que el resto de la columna, sería {converted} {target}; se esperaba entre {minimum} y {maximum} {target}. Se omitió.',
  'problem.inventory-out-of-range':
    'es {converted} {target}; se esperaba entre {minimum} y {maximum} {target}. Se omitió.',
  'problem.inventory-not-a-count': 'no es un número de 0 a 8. Se omitió.',
  'problem.inventory-unreadable-outlets':
    'no se puede leer como cantidades y tamaños. Escríbalo como 2 x 2.5, 1 x 4.5. Se omitió.',
  'problem.inventory-outlet-counts-differ':
    'cuenta {counted} bocas, pero hay {listed} con tamaño. Se conservó la lista.',
  'problem.inventory-not-a-date': 'no es una fecha. Se omitió.',
  'problem.inventory-ambiguous-date':
    'podría ser dos fechas, y nada en la columna muestra si va primero el día o el mes. Se omitió. Indíquelo con --date-order mdy o dmy.',
  'problem.inventory-impossible-date': 'no es una fecha posible. Se omitió.',
  'problem.inventory-future-date': 'es posterior a hoy ({today}). Se omitió.',
  'problem.inventory-placeholder-date': 'es lo que los programas escriben por «sin fecha». Se omitió.',
  'problem.inventory-text-too-long': 'se cortó a {longest} caracteres.',

  'problem.inventory-id-from-source':
    'sin número propio; se tomó el que el origen da al registro (como node/123456)',
  'problem.inventory-id-from-place':
    'sin número; se tomó su lugar, redondeado a cerca de un metro (como @35.06239,-85.30722), que es igual en cada importación',
  'problem.inventory-coordinates-as-text': 'las coordenadas estaban como texto y se leyeron como números',
  'problem.inventory-type-not-specific': 'dice hidrante pero no de qué barril; el tipo queda desconocido',
  'problem.inventory-count-as-word': 'una cantidad en palabras, leída como número',
  'problem.inventory-outlet-size-without-count': 'un tamaño, pero no cuántas bocas; los tamaños se omitieron',
  'problem.inventory-zero-as-blank': 'cero, tomado como vacío',
  'problem.inventory-unit-misspelled': 'una unidad mal escrita, leída como se quiso decir',
  'problem.inventory-year-only': 'solo un año; se guardó como su 1 de enero',
  'problem.inventory-two-digit-year': 'un año de dos cifras; se tomó el último que no está en el futuro',

  'problem.inventory-no-file':
    'Indique el archivo que se va a importar: npm run import -- ARCHIVO [--dry-run]',
  'problem.inventory-one-file':
    'Indique un solo archivo. Una importación es todo el inventario, así que junte antes los archivos.',
  'problem.inventory-file-not-found': 'No hay un archivo «{file}» que se pueda leer.',
  'problem.inventory-report-not-written':
    'No se puede escribir {file} ({code}). Indique un archivo en una carpeta que exista y en la que pueda escribir.',
  'problem.inventory-unknown-option':
    'No existe la opción «{option}». npm run import -- --help muestra las que hay.',
  'problem.inventory-option-needs-value': '{option} necesita un valor: {form}',
  'problem.inventory-unknown-field': 'No hay un campo «{field}». Los campos son: {fields}.',
  'problem.inventory-map-form':
    '«{value}» no tiene la forma campo=columna (varias columnas: campo=columna+columna; ninguna: campo=).',
  'problem.inventory-field-has-no-unit': '«{field}» no tiene unidad. Estos sí: {fields}.',
  'problem.inventory-no-such-unit': '«{unit}» no es una unidad de {field}. Elija una de: {units}.',
  'problem.inventory-no-such-date-order':
    '«{value}» no es un orden de fecha. Use mdy (4/23/2013) o dmy (23/4/2013).',
  'problem.inventory-not-acceptable': '«{value}» no se puede aceptar. Elija una de: {values}.',
  'problem.inventory-no-such-language': '«{value}» no es un idioma de este programa. Use en o es.',

  'inventory.help': `npm run import -- ARCHIVO [opciones]

Lee todo el inventario de hidrantes de CSV, GeoJSON u OSM XML, dice qué entiende de cada columna y de cada fila dudosa, y lo pone en vigor.

  --dry-run              mostrar todo, no escribir nada
  --crs EPSG:2263        en qué están las coordenadas proyectadas (o una definición proj4)
  --map campo=COLUMNA    llenar un campo con esta columna; campo= lo deja fuera; A+B une dos columnas
  --unit campo=mm        la unidad de los números solos de un campo
  --date-order mdy|dmy   qué significa 04/05/2021 donde nada lo muestra
  --accept RAZÓN         tomar los valores omitidos por esta razón: {acceptable}
  --allow-fewer          reemplazar el inventario vigente por uno mucho menor
  --by NOMBRE            quién lo carga (por omisión: la cuenta que ejecuta esto)
  --report ARCHIVO       escribir cada hallazgo en ARCHIVO (.csv o .json)
  --json                 imprimir todo el informe como JSON
  --lang en|es           idioma del informe

Campos: {fields}

DEPLOYMENT_URL=https://… e INVENTORY_URL=s3://BUCKET/ cargan en un despliegue (docs/operations/inventory.md); sin ellas, va a la carpeta de datos de esta máquina.`,
  'inventory.title.file': '{file}: {format}, {rows} filas',
  'inventory.format.csv': 'CSV',
  'inventory.format.geojson': 'GeoJSON',
  'inventory.format.osm': 'OSM XML',
  'inventory.title.place': 'Coordenadas',
  'inventory.place.points': 'el punto de cada elemento, {crs} ({why})',
  'inventory.place.columns': 'columnas {columns}, {crs} ({why})',
  'inventory.why.stated': 'indicado por usted',
  'inventory.why.file': 'indicado por el archivo',
  'inventory.why.format': 'por la regla del formato',
  'inventory.why.values': 'según los valores',
  'inventory.title.mapping': 'Columnas usadas',
  'inventory.mapping.line': '{field} ← {columns} · {filled} de {rows} filas · {examples}',
  'inventory.mapping.cut-name': 'nombre cortado a diez caracteres, es una suposición: compruébelo',
  'inventory.mapping.by-values': 'hallado por sus valores',
  'inventory.mapping.stated': 'indicado por usted',
  'inventory.unit.stated': 'números solos en {unit}, indicado por usted',
  'inventory.unit.column-name': 'números solos en {unit}, por el nombre de la columna',
  'inventory.unit.osm-tag': 'números solos en {unit}, por la definición de la etiqueta',
  'inventory.unit.written': 'unidad escrita junto a los números: {written}',
  'inventory.unit.mixed': 'las unidades cambian de una fila a otra: {written}',
  'inventory.unit.values': 'números solos en {unit}, lo muestran los tamaños',
  'inventory.unit.usual': 'números solos tomados como {unit}',
  'inventory.unit.not-shown': 'nada indica la unidad',
  'inventory.date.mdy': 'primero el mes, como muestran sus valores o usted indicó',
  'inventory.date.dmy': 'primero el día, como muestran sus valores o usted indicó',
  'inventory.decimal-comma': 'coma como signo decimal',
  'inventory.title.unmapped': 'Columnas sin usar',
  'inventory.unmapped.line': '{column} · {filled} de {rows} filas · {examples}',
  'inventory.makers':
    '{column}: {spellings} formas de escribir unos {names} fabricantes; por ejemplo {example}',
  'inventory.title.remarks': 'Sobre el archivo',
  'inventory.title.notes': 'Cómo se leyeron las filas',
  'inventory.note.line':
    '{rows, plural, one {# fila} other {# filas}}{column, select, none {} other { · {column}}}: {what}{examples, select, none {} other { ({examples})}}',
  'inventory.title.rejected':
    'Rechazadas: {rows, plural, one {# fila} other {# filas}}, fuera del inventario',
  'inventory.title.doubtful':
    'Dudosas: {rows, plural, one {# fila} other {# filas}}, dentro del inventario; por revisar',
  'inventory.finding.code': '{rows, plural, one {# fila} other {# filas}} · {code}',
  'inventory.finding.more': '… y {count} más; --report ARCHIVO las muestra todas',
  'inventory.at.line': 'línea {line}',
  'inventory.at.feature': 'elemento {row} (línea {line})',
  'inventory.at.element': 'línea {line}, {element}',
  'inventory.sum':
    '{rows} filas leídas = {clean} limpias + {doubtful} con dudas + {rejected} rechazadas. {accepted} hidrantes.',
  'inventory.dry-run': 'Ensayo: no se escribió nada.',
  'inventory.loaded': 'Vigente ahora: edición {edition}, {accepted} hidrantes, manifiesto {manifest}.',
  'inventory.fact-posted': 'La carga quedó registrada en el libro.',
  'inventory.fact-pending': 'El servidor registra la carga en el libro cuando vuelva a leer el inventario.',
  'inventory.report-written': 'Cada hallazgo: {file}',
  'inventory.column.level': 'nivel',
  'inventory.column.where': 'dónde',
  'inventory.column.row': 'fila',
  'inventory.column.element': 'registro',
  'inventory.column.field': 'campo',
  'inventory.column.column': 'columna',
  'inventory.column.value': 'valor',
  'inventory.column.reason': 'razón',
  'inventory.column.sentence': 'qué hacer',
  'inventory.level.rejected': 'rechazada',
  'inventory.level.doubt': 'dudosa',
};
