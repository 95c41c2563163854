import type { map as english } from '../en/map.ts';

export const map: Record<keyof typeof english, string> = {
  'map.title': 'Mapa de hidrantes',
  'map.nav': 'Mapa',
  'map.open': 'Mapa más grande, e hidrantes cerca de usted',
  'map.lead': 'Cada señal numerada es un hidrante fuera de servicio; la lista tiene los datos de cada uno.',
  'map.list-link': 'Lista de hidrantes fuera de servicio',
  'map.further':
    '{count, plural, one {Hay # más fuera de servicio: un cuadrado sin número.} other {Hay # más fuera de servicio: cuadrados sin número.}}',
  'map.placeless':
    '{count, plural, one {# hidrante fuera de servicio no está en el mapa, porque no se conoce su lugar. Está en la lista.} other {# hidrantes fuera de servicio no están en el mapa, porque no se conocen sus lugares. Están en la lista.}}',

  'map.group': 'Mapa. Las flechas lo mueven, más y menos lo acercan y alejan, cero lo muestra entero.',
  'map.buttons': 'Mover el mapa',
  'map.in': 'Acercar',
  'map.out': 'Alejar',
  'map.whole': 'Ver el mapa entero',
  'map.left': 'Mover al oeste',
  'map.right': 'Mover al este',
  'map.up': 'Mover al norte',
  'map.down': 'Mover al sur',
  'map.hint':
    'Arrastre para mover; con Ctrl y la rueda, o con dos dedos, se acerca y se aleja. Un toque en el mapa lista lo más cercano a ese punto.',
  'map.streets': 'Mostrar las calles',
  'map.streets-from':
    'Las calles vienen de {host}, que entonces ve qué parte del mapa está mirando. No se muestran hasta que usted las pida.',
  'map.streets-by': 'Calles: {attribution}',
  'map.streets-failed': 'Algunas calles no se pudieron cargar de {host}.',
  'map.streets-off':
    'Las calles se apagaron, porque pedir las que rodean su posición le diría a {host} dónde está usted.',

  'map.near': 'Hidrantes cerca de usted',
  'map.find': 'Buscar hidrantes cerca de mí',
  'map.middle': 'Los más cercanos al centro del mapa',
  'map.privacy':
    'Su posición se usa solo en este dispositivo y no se envía. La página pide a este sitio listas de distritos enteros, y en una ciudad pequeña las pide todas.',
  'map.locating': 'Preguntando al dispositivo dónde está…',
  'map.reading': 'Leyendo la lista de hidrantes…',
  'map.denied':
    'El dispositivo no dio su posición: esta página no tiene permiso. Mueva el mapa a donde está usted y elija «Los más cercanos al centro del mapa».',
  'map.insecure':
    'El navegador no da la posición a una página que llegó sin cifrar (https). Mueva el mapa a donde está usted y elija «Los más cercanos al centro del mapa».',
  'map.failed':
    'El dispositivo no pudo hallar su posición. Mueva el mapa a donde está usted y elija «Los más cercanos al centro del mapa».',
  'map.unreachable':
    'No se pudo leer la lista de hidrantes: no hay conexión, o el servicio no responde. No se puede decir qué hay cerca. Llame al {phone}.',
  'map.from-before':
    'No hay conexión. Esto viene de la lista leída antes: se comprobó {checked} y puede haber cambiado.',
  'map.renewed': 'La lista se está renovando en este momento. Vuelva a intentarlo en unos segundos.',
  'map.broken': 'La lista de hidrantes no se pudo entender; es una falla de esta página. Llame al {phone}.',
  'map.old': 'No confíe en esta lista: se comprobó {checked} y era válida hasta {until}. Llame al {phone}.',
  'map.behind':
    'Los avisos recibidos desde el {since} aún no están en esta lista: un hidrante que ella ofrece puede estar fuera de servicio. Llame al {phone}.',
  'map.early':
    'El reloj de su dispositivo va por detrás de la comprobación de esta lista ({checked}), así que no puede saber si aún es válida.',
  'map.times': 'Comprobado: {checked}. No confíe en ella después de: {until}.',
  'map.here': 'Los más cercanos a su posición',
  'map.at-point': 'Los más cercanos al punto del mapa',
  'map.line': 'Las distancias son en línea recta, no por las calles.',
  'map.accuracy': 'El dispositivo da su posición con un margen de {distance}.',
  'map.coarse':
    'El dispositivo da su posición solo con un margen de {distance}: el orden puede estar mal, y puede haber un hidrante más cerca de lo que dice.',
  'map.found': '{hydrant} es el más cercano en servicio: {away}.',
  'map.none': 'La lista no tiene ningún hidrante en servicio.',
  'map.passed': 'No use estos en el camino',
  'map.out-since': 'FUERA DE SERVICIO desde {since}',
  'map.you': 'el punto desde el que se miden las distancias',
  'map.mark': '{number}: {hydrant}, {away}',

  'problem.tile-address':
    "Dé una dirección https con un solo host y con '{z}', '{x}' e '{y}' una vez cada uno, como https://tiles.example.gov/calles/'{z}'/'{x}'/'{y}'.png.",
};
