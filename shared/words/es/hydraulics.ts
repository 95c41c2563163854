import type { hydraulics as english } from '../en/hydraulics.ts';

export const hydraulics: Record<keyof typeof english, string> = {
  'hydraulics.unit.psi.symbol': 'psi',
  'hydraulics.unit.psi.name': 'libras por pulgada cuadrada',
  'hydraulics.unit.kPa.symbol': 'kPa',
  'hydraulics.unit.kPa.name': 'kilopascales',
  'hydraulics.unit.bar.symbol': 'bar',
  'hydraulics.unit.bar.name': 'bares',
  'hydraulics.unit.gpm.symbol': 'gpm',
  'hydraulics.unit.gpm.name': 'galones (EE. UU.) por minuto',
  'hydraulics.unit.MGD.symbol': 'MGD',
  'hydraulics.unit.MGD.name': 'millones de galones (EE. UU.) por día',
  'hydraulics.unit.L/s.symbol': 'L/s',
  'hydraulics.unit.L/s.name': 'litros por segundo',
  'hydraulics.unit.L/min.symbol': 'L/min',
  'hydraulics.unit.L/min.name': 'litros por minuto',
  'hydraulics.unit.m3/h.symbol': 'm³/h',
  'hydraulics.unit.m3/h.name': 'metros cúbicos por hora',
  'hydraulics.unit.in.symbol': 'pulg',
  'hydraulics.unit.in.name': 'pulgadas',
  'hydraulics.unit.mm.symbol': 'mm',
  'hydraulics.unit.mm.name': 'milímetros',
  'hydraulics.unit.ft.symbol': 'pies',
  'hydraulics.unit.ft.name': 'pies',
  'hydraulics.unit.m.symbol': 'm',
  'hydraulics.unit.m.name': 'metros',
  'hydraulics.unit.mi.symbol': 'mi',
  'hydraulics.unit.mi.name': 'millas',
  'hydraulics.unit.km.symbol': 'km',
  'hydraulics.unit.km.name': 'kilómetros',
  'hydraulics.unit.gal.symbol': 'gal',
  'hydraulics.unit.gal.name': 'galones (EE. UU.)',
  'hydraulics.unit.L.symbol': 'L',
  'hydraulics.unit.L.name': 'litros',
  'hydraulics.unit.m3.symbol': 'm³',
  'hydraulics.unit.m3.name': 'metros cúbicos',
  'hydraulics.unit.lbf.ft.symbol': 'lbf·pie',
  'hydraulics.unit.lbf.ft.name': 'libras-fuerza pie',
  'hydraulics.unit.N.m.symbol': 'N·m',
  'hydraulics.unit.N.m.name': 'newton metros',

  'hydraulics.unit.k.us': 'gpm/√psi',
  'hydraulics.unit.k.metric': 'L/min/√bar',

  'hydraulics.class': 'clase {hydrantClass}',
  'hydraulics.no-class': 'sin clase',
  'hydraulics.color.light-blue': 'azul claro',
  'hydraulics.color.green': 'verde',
  'hydraulics.color.orange': 'naranja',
  'hydraulics.color.red': 'rojo',
  'hydraulics.color.yellow': 'amarillo',
  'hydraulics.color.white': 'blanco',
  'hydraulics.color.black': 'negro',
  'hydraulics.color.silver': 'plateado',

  'hydraulics.shape.rounded': 'Lisa y redondeada donde se une al cuerpo',
  'hydraulics.shape.square': 'De borde recto y vivo donde se une al cuerpo',
  'hydraulics.shape.projecting': 'De borde recto y saliente hacia dentro del cuerpo',
  'hydraulics.shape.picture': '{shape}, coeficiente {coefficient}',

  'hydraulics.card.outlet-flow': 'Caudal de una boca por pitot',
  'hydraulics.card.pumper-factor': 'Factor de una boca de autobomba',
  'hydraulics.card.diffuser-flow': 'Caudal por un difusor',
  'hydraulics.card.available-flow': 'Caudal disponible a una presión residual',
  'hydraulics.card.residual-at-flow': 'Presión residual a un caudal',
  'hydraulics.card.pressure-drop': 'Caída de presión de una prueba',
  'hydraulics.card.hydrant-class': 'Clase según la capacidad nominal',

  'hydraulics.curve.title': 'Curva de suministro de agua',
  'hydraulics.curve.title-of': 'Curva de suministro de agua de {subject}',
  'hydraulics.curve.flow-axis': 'Caudal, {unit} (escala N^1.85)',
  'hydraulics.curve.pressure-axis': 'Presión residual, {unit}',
  'hydraulics.curve.static': 'estática {pressure}',
  'hydraulics.curve.test': 'prueba {flow} a {pressure}',
  'hydraulics.curve.target': '{flow} a {pressure}',
  'hydraulics.curve.readings':
    'Presión estática {static}. Con un caudal de {flow}, la presión residual fue {residual}.',
  'hydraulics.curve.at-target': 'El suministro da {flow} a una presión residual de {target}.',
  'hydraulics.curve.within': 'Por sus lecturas está entre {low} y {high} (95 %).',
  'hydraulics.curve.below-target':
    'La presión estática no supera {target}, así que no hay caudal disponible a esa presión residual.',
  'hydraulics.curve.no-projection':
    'La presión bajó demasiado poco para saber qué caudal hay a una presión residual de {target}.',

  'hydraulics.warning.drop-too-small':
    'La presión bajó solo {dropPsi} ({dropPercent} % de la estática), demasiado poco para clasificar el hidrante: hace falta al menos {neededPsi} ({neededPercent} %). Abra otra boca u otro hidrante y repita todas las lecturas.',
  'hydraulics.warning.residual-below-rating':
    'La presión residual bajó a {residualPsi}, por debajo de {ratingResidualPsi}. Cierre despacio una boca hasta que se mantenga en {ratingResidualPsi} o más y repita todas las lecturas: con poca presión la tubería principal puede aspirar agua sucia.',
  'hydraulics.warning.static-below-rating':
    'La presión estática, {staticPsi}, no supera {ratingResidualPsi}, así que no hay caudal disponible a esa presión residual. Compruebe que las válvulas de esta tubería principal están abiertas y que el manómetro marca cero al aire; si es así, avise a operaciones de la empresa de agua.',
  'hydraulics.warning.static-weak':
    'La presión estática, {staticPsi}, es menor que {weakStaticPsi}: un sistema débil. Esta clasificación es a {ratingResidualPsi}; si la norma local clasifica los sistemas débiles a la mitad de la estática ({halfStaticPsi}), elija esa regla.',
  'hydraulics.warning.rated-at-half-static':
    'La presión estática, {staticPsi}, es menor que {weakStaticPsi}, así que el hidrante se clasifica a su mitad, {ratingResidualPsi}. Anote esa presión residual junto a la clase.',
  'hydraulics.warning.capacity-uncertain':
    'Con estas lecturas la capacidad puede estar entre {lowGpm} y {highGpm}. Abra otra boca para que la caída sea mayor, o use manómetros más finos, y repita todas las lecturas.',
  'hydraulics.warning.flowed-at-residual-hydrant':
    'El hidrante {hydrantId} fluía mientras se leía su propia presión, así que la caída incluye su cuerpo y su ramal. Lea la estática y la residual en un hidrante que quede cerrado y repita la prueba.',
  'hydraulics.warning.gauge-out-of-calibration':
    'El manómetro {gaugeId} se calibró por última vez el {calibratedOn}, {days} días antes de esta prueba; se admiten {mostDays} como máximo. Repita las lecturas con un manómetro al día o compare este con uno que lo esté.',
  'hydraulics.warning.gauge-calibration-unknown':
    'No se sabe cuándo se calibró el manómetro {gaugeId}. Compárelo con uno al día y anote lo que marcan los dos.',
  'hydraulics.warning.gauge-calibrated-after-test':
    'El manómetro {gaugeId} figura como calibrado el {calibratedOn}, después de la prueba del {testedOn}. Corrija la fecha o indique qué calibración valía el día de la prueba.',
  'hydraulics.warning.reading-above-gauge':
    'El manómetro {gaugeId} llega hasta {rangePsi} y figura con una lectura de {readPsi}. Corrija la lectura o el alcance, o repita la lectura con un manómetro de mayor alcance.',
  'hydraulics.warning.static-jumped':
    'La presión estática es {changePsi} {direction, select, up {mayor} other {menor}} que en la última prueba ({previousStaticPsi} el {testedOn}). Compruebe que el manómetro marca cero al aire, pregunte a operaciones por bombas, depósitos y válvulas, y lea de nuevo la estática.',
  'hydraulics.warning.flow-above-last-test':
    'El caudal suma {measuredFlowGpm}, pero según la última prueba ({testedOn}) no podrían fluir más de {mostFlowGpm} sin presión alguna. Revise los diámetros, los coeficientes y las lecturas del pitot, y pregunte si se cambió la tubería principal.',
  'hydraulics.warning.class-not-at-target':
    'La clase es según el caudal a {ratingResidualPsi}, no a los {targetResidualPsi} solicitados. Pinte el hidrante según la clase.',
  'hydraulics.warning.flow-implausible':
    'El caudal suma {measuredFlowGpm}, más de {mostFlowGpm}. Revise los diámetros de las bocas y las lecturas del pitot por si hay un error al anotarlas.',
  'hydraulics.warning.pitot-too-low':
    'Boca {outlet}: el pitot marcó {pitotPsi}, menos de {minimumPsi}, donde la aguja se lee mal. {outletKind, select, pumper {Use una boca de manguera} other {Cierre otra boca o use una más pequeña}} y repita todas las lecturas.',
  'hydraulics.warning.pitot-too-high':
    'Boca {outlet}: el pitot marcó {pitotPsi}, más de {maximumPsi}. {outletKind, select, pumper {Abra también una boca de manguera} other {Abra otra boca}} para bajarlo y repita todas las lecturas.',
  'hydraulics.warning.pitot-above-static':
    'Boca {outlet}: el pitot marcó {pitotPsi}, más que la presión estática, {staticPsi}. Salvo que el hidrante que fluye esté mucho más bajo que el otro, revise los dos manómetros y repita la lectura.',
  'hydraulics.warning.pumper-pitot-below-table':
    'Boca {outlet}: no hay factor para una boca de autobomba por debajo de {tablePsi}, y el pitot marcó {pitotPsi}; se usa el factor de {tablePsi}. Use una boca de manguera y repita todas las lecturas.',
  'hydraulics.warning.outlet-may-be-pumper':
    'La boca {outlet} mide {diameterIn} de ancho: indique si es una boca de autobomba. Calculado como boca de manguera, su caudal puede salir una sexta parte más alto.',
  'hydraulics.warning.coefficient-unusual':
    'Boca {outlet}: un coeficiente de {coefficient} es poco común. Palpe el interior de la boca: 0.90 redondeada, 0.80 de borde vivo, 0.70 saliente hacia dentro.',

  'hydraulics.answer.rated':
    '{hydrantClass}, {capacity}, de {low} a {high} al {coverage} %, clase {hydrantClass} con {chance} de seguridad',
  'hydraulics.answer.chance': 'un {percent} %',
  'hydraulics.answer.chance-over': 'más de un 99 %',
  'hydraulics.answer.nothing': '{hydrantClass}: no hay caudal a {residual}, la estática no la supera',
  'hydraulics.answer.no-class': 'Sin clase: la presión bajó demasiado poco para clasificar el hidrante',
  'hydraulics.answer.basis':
    'Solo por las lecturas: manómetros, diámetro y coeficiente. No incluye lo que una red mallada o con bombas cambia en la relación.',
  'hydraulics.cause.pressure': 'presiones estática y residual',
  'hydraulics.cause.pitot': 'lecturas del pitot',
  'hydraulics.cause.diameter': 'diámetros de las bocas',
  'hydraulics.cause.coefficient': 'coeficiente de la boca',
  'hydraulics.cause.pumper-factor': 'factor de boca de autobomba',
  'hydraulics.cause.diffuser': 'constante del difusor',
  'hydraulics.cause.meter': 'contador',
  'hydraulics.assumed.pressure-gauge': 'manómetro de la clase habitual',
  'hydraulics.assumed.pitot-gauge': 'manómetro de pitot de la clase habitual',
  'hydraulics.assumed.diameter-measured': 'diámetros medidos por dentro de las bocas',

  'hydraulics.caution.traffic':
    'Tráfico: coloque conos y señales antes de que nadie pise la calzada y deje a alguien vigilando.',
  'hydraulics.caution.discharge-path':
    'Mire adónde irá el agua. Que no haya sótanos, taludes, calzadas ni transeúntes en su camino; si los hay, use un difusor.',
  'hydraulics.caution.ice':
    'Con helada, no vierta sobre calzadas ni aceras; si es inevitable, haga tratar el hielo antes de irse.',
  'hydraulics.caution.slowly':
    'Abra y cierre despacio, y abra del todo un hidrante de cuerpo seco: cerrar deprisa golpea la tubería, y un hidrante a medio abrir descarga por su drenaje.',
  'hydraulics.caution.stand-clear':
    'No se ponga nunca sobre una tapa ni delante de un tapón que pueda tener presión. Saque antes el aire.',
  'hydraulics.caution.dechlorinate':
    'Donde las normas de vertido lo pidan, elimine el cloro antes de que el agua llegue a un arroyo o al drenaje pluvial.',
  'hydraulics.caution.no-pressure':
    'No gire ningún perno antes de que el hidrante esté aislado, sin presión comprobada y drenado.',
  'hydraulics.caution.rules-decide':
    'Donde el manual del fabricante o una norma local digan otra cosa, mandan ellos.',

  'problem.given-in-two-units': 'Esto está también en otra unidad ({other}). Indíquelo una sola vez.',
  'problem.range-upside-down': 'El extremo superior debe estar por encima del inferior.',
  'problem.bands-not-falling':
    'Liste las clases de mayor a menor caudal; esta debe empezar por debajo de la anterior.',
  'problem.class-twice': 'La clase {hydrantClass} está dos veces.',
  'problem.bands-end-above-zero': 'La última clase debe empezar en 0, para que todo hidrante tenga una.',
  'problem.flow-given-twice': 'Indique las bocas o un caudal medido con contador, no ambos.',
  'problem.units-differ':
    'No se puede convertir {from} a {to}: miden cosas distintas. Elija una de: {choices}.',

  'hydraulics.compute.flow-test.summary':
    'Lo que una prueba de caudal dice de un hidrante: caudal medido, caudal a una presión residual, clase, dudas.',
  'hydraulics.compute.flow-test.output':
    'answer en una línea; measuredFlowGpm; availableFlowGpm a targetResidualPsi, null si la caída es demasiado pequeña; hydrantClass AA, A, B, C o null, y className como la llama la empresa; drop con psi, fracción de la estática, sufficient; rating con residualPsi, basis, capacityGpm; interval de la capacidad según las lecturas al 95 % (lowGpm, highGpm, probabilidad de cada clase, qué lo causa, qué se supuso), null si no hay capacidad; el caudal de cada boca e hidrante; warnings con code, params y una frase que dice qué hacer; cautions.',
  'hydraulics.compute.supply-curve.summary':
    'La curva de suministro de una prueba de caudal, con el intervalo de sus lecturas.',
  'hydraulics.compute.supply-curve.output': 'svg; description en frases para quien no la ve.',
  'hydraulics.compute.outlet-flow.summary': 'Caudal de una boca por pitot, difusor o contador.',
  'hydraulics.compute.outlet-flow.output':
    'flowGpm; pumperFactor incluido en él (1 en una boca de manguera).',
  'hydraulics.compute.available-flow.summary': 'Caudal a una presión residual, a partir de una prueba.',
  'hydraulics.compute.available-flow.output':
    'flowGpm a targetResidualPsi, null si la caída es demasiado pequeña para saberlo; drop con psi, fracción de la estática, sufficient.',
  'hydraulics.compute.hydrant-class.summary': 'Clase y color de una capacidad nominal.',
  'hydraulics.compute.hydrant-class.output':
    'hydrantClass AA, A, B o C; color; wholeGpm, el caudal redondeado con el que se juzgó.',
  'hydraulics.compute.convert.summary': 'Un valor en otra unidad.',
  'hydraulics.compute.convert.output': 'value en la unidad pedida; factor por el que se multiplicó.',

  'problem.beyond-numbers': 'En {to} esto supera los números de una computadora. Indique un valor menor.',
  'hydraulics.command.usage':
    'Uso: npm run -s compute -- NOMBRE [ARCHIVO] [--units metric] [--locale es]\nLee JSON de ARCHIVO o de la entrada estándar e imprime el resultado como JSON. Las cantidades pueden darse en métrico por su nombre (staticKpa, diameterMm, flowLPerMin). El código de salida 2 significa que la entrada tiene problemas; se enumeran todos.',
  'hydraulics.command.names': 'Cálculos:',
  'hydraulics.command.gives': 'Da: {output}',
  'hydraulics.command.example': 'Ejemplo:',
  'hydraulics.command.refused':
    '{count, plural, one {Hay un problema} other {Hay # problemas}} en esta entrada:',
  'problem.unknown-computation': 'No existe el cálculo «{name}». Elija uno de: {names}.',
  'problem.too-many-arguments': 'Indique un nombre y como mucho un archivo; esto sobra: {extra}.',
  'problem.file-unreadable':
    'No se puede leer {file}: {reason, select, ENOENT {no existe ese archivo} EACCES {no tiene permiso} EISDIR {es una carpeta} other {{reason}}}.',
  'problem.no-input': 'No hubo entrada. Indique un archivo o envíe JSON por la entrada estándar.',
  'problem.input-too-large': 'La entrada supera {megabytes} MB.',
  'problem.input-not-json':
    'No es JSON válido{line, select, none {} other { (línea {line}, columna {column})}}: {detail}',
};
