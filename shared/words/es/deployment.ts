import type { deployment as english } from '../en/deployment.ts';

export const deployment: Record<keyof typeof english, string> = {
  'problem.public-url-not-domain': 'Hay un dominio fijado, así que esta es su dirección: {url}',
  'problem.rely-too-short':
    'Indique más del doble del intervalo, {least} minutos o más, para que una publicación fallida no haga daño.',
  'problem.stage-name': 'Use minúsculas y cifras, primero una letra, no más de 12.',
  'problem.domain-prefix':
    'Use de 4 a 52 minúsculas, cifras y guiones; primero una letra, y ningún guion al final.',
  'problem.host-name': 'Indique un nombre en minúsculas sin https://, como hydrants.water.example.',
  'problem.certificate-arn':
    'Indique el ARN de un certificado en us-east-1: arn:aws:acm:us-east-1:CUENTA:certificate/ID.',
  'problem.hosted-zone-id': 'Indique el id de la zona hospedada: una Z, luego mayúsculas y cifras.',
  'command.deployment-address':
    '«{address}» no es la dirección de un despliegue. Escríbala con https://, por ejemplo https://hydrants.example.',
  'command.deployment-silent':
    '{address} no responde como este programa. ¿Es correcta la dirección, y está desplegado?',
  'command.no-sign-in-page':
    '{address} no tiene página de inicio de sesión. Fije DEPLOYMENT_TOKEN con una credencial que acepte.',
  'command.not-signed-in':
    'Nadie ha iniciado sesión en {address} desde este equipo, o la sesión ha caducado. Ejecute: npm run sign-in -- {address}',
  'command.sign-in-refused':
    '{address} no confirmó el inicio de sesión. Vuelva a ejecutarlo; una persona responsable puede ver en la lista si usted figura en ella.',
  'command.sign-in-waited':
    'Nadie volvió de la página de inicio de sesión en {minutes} minutos. Vuelva a ejecutarlo.',
  'command.sign-in-usage': 'Dé una dirección: npm run sign-in -- https://hydrants.example',
  'command.sign-in-open': 'Abra esto en un navegador de este equipo e inicie sesión:\n{address}',
  'command.sign-in-done-browser': 'Sesión iniciada. Puede cerrar esta ventana.',
  'command.sign-in-done':
    'Sesión iniciada en {address}. Se guarda en {file}, que solo usted puede leer; bórrelo para cerrarla.',
  'command.deployment-url-too':
    '{name} está definida y DEPLOYMENT_URL no. Defina ambas para cargar en un despliegue, o ninguna para esta máquina.',
  'command.deployment-variable': 'Fije también {name}: la pila de los datos lo dice entre sus salidas.',
  'smoke.page': 'la página pública responde',
  'smoke.headers': 'sus cabeceras son las estrictas',
  'smoke.health': 'salud: el cálculo, el almacén y la página están bien',
  'smoke.utility': 'se leen los datos de la empresa de aguas',
  'smoke.closed': 'nadie lee el escritorio sin iniciar sesión',
  'smoke.manager': 'esta sesión es de responsable',
  'smoke.taken': 'se acepta un aviso de prueba',
  'smoke.once': 'enviado otra vez es el mismo, y otro con su identificador se rechaza',
  'smoke.photo': 'su foto llega',
  'smoke.apart': 'la prueba no está en ninguna lista, página ni mensaje',
  'smoke.line': '{state, select, ok {bien  } other {FALLA }}{what}{found, select, none {} other {: {found}}}',
  'smoke.well': '{address} está bien.',
  'smoke.not-well': '{address} no está bien: vea las líneas marcadas con FALLA.',
  'smoke.open-only':
    'Nadie ha iniciado sesión en {address}, así que solo se miró lo que cualquiera puede ver. Para lo demás: npm run sign-in -- {address}',
  'smoke.usage':
    'Dé una dirección: npm run smoke -- https://hydrants.example. Con la sesión de un responsable (npm run sign-in, o una clave en DEPLOYMENT_TOKEN) entrega también pruebas.',
};
