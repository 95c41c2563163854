import type { PhotoName } from '../photos.ts';

/** What one drawn photo shows. */
export interface Scene {
  readonly view: 'overall' | 'mid' | 'scale' | 'repaired';
  readonly light: 'day' | 'dusk' | 'night';
  readonly paint: string;
  readonly ground: 'curb' | 'roadside';
  readonly stamp: string;
  readonly jet?: boolean;
}

export const scenes: Record<PhotoName, Scene> = {
  'sailmaker-overall': {
    view: 'overall',
    light: 'day',
    paint: '#c8442d',
    ground: 'curb',
    stamp: 'TH-0071  view from the curb',
  },
  'sailmaker-mid': {
    view: 'mid',
    light: 'day',
    paint: '#c8442d',
    ground: 'curb',
    stamp: 'TH-0071  breakaway flange',
  },
  'sailmaker-scale': {
    view: 'scale',
    light: 'day',
    paint: '#c8442d',
    ground: 'curb',
    stamp: 'TH-0071  stem coupling, rule in inches',
  },
  'sailmaker-repaired': {
    view: 'repaired',
    light: 'dusk',
    paint: '#c8442d',
    ground: 'curb',
    stamp: 'TH-0071  rebuilt',
  },
  'quince-overall': {
    view: 'overall',
    light: 'dusk',
    paint: '#d9a520',
    ground: 'roadside',
    stamp: 'TH-0138  view from the curb',
  },
  'quince-mid': {
    view: 'mid',
    light: 'dusk',
    paint: '#d9a520',
    ground: 'roadside',
    stamp: 'TH-0138  breakaway flange',
  },
  'quince-scale': {
    view: 'scale',
    light: 'dusk',
    paint: '#d9a520',
    ground: 'roadside',
    stamp: 'TH-0138  stem coupling, rule in inches',
  },
  'quince-repaired': {
    view: 'repaired',
    light: 'day',
    paint: '#d9a520',
    ground: 'roadside',
    stamp: 'TH-0138  rebuilt',
  },
  'millpond-overall': {
    view: 'overall',
    light: 'night',
    paint: '#c8442d',
    ground: 'roadside',
    stamp: 'TH-0345  from the road',
    jet: true,
  },
  'millpond-scale': {
    view: 'scale',
    light: 'night',
    paint: '#c8442d',
    ground: 'roadside',
    stamp: 'TH-0345  parted flange, rule in inches',
  },
  'gullpoint-overall': {
    view: 'overall',
    light: 'night',
    paint: '#3c7d4f',
    ground: 'curb',
    stamp: 'TH-0203  from the curb, water shut',
  },
};

const skies = {
  day: ['#b9d4e6', '#eef3f2'],
  dusk: ['#7f88a6', '#e9c6a2'],
  night: ['#141b2b', '#2b3448'],
} as const;

/** A hydrant standing at (0, 0) = ground under its barrel, about 300 high, seen from the front. */
function hydrant(paint: string, parted: boolean): string {
  const dark = 'rgba(0,0,0,0.28)';
  const upper = `
    <g transform="${parted ? 'translate(150 -26) rotate(68)' : 'translate(0 -70)'}">
      <rect x="-46" y="-170" width="92" height="170" rx="10" fill="${paint}"/>
      <rect x="12" y="-170" width="34" height="170" rx="10" fill="${dark}"/>
      <ellipse cx="0" cy="-172" rx="58" ry="14" fill="${paint}"/><path d="M-50 -176 Q0 -236 50 -176 Z" fill="${paint}"/><path d="M10 -222 Q44 -206 50 -176 L20 -176 Z" fill="${dark}"/>
      <rect x="-9" y="-238" width="18" height="26" rx="3" fill="#5a5f63"/>
      <circle cx="0" cy="-96" r="34" fill="#8d9297"/><circle cx="0" cy="-96" r="22" fill="#6d7277"/><rect x="-7" y="-103" width="14" height="14" fill="#494d51"/>
      <rect x="-82" y="-122" width="40" height="44" rx="6" fill="#8d9297"/><rect x="42" y="-122" width="40" height="44" rx="6" fill="#72777c"/>
      <ellipse cx="0" cy="0" rx="66" ry="15" fill="${paint}"/><ellipse cx="0" cy="4" rx="66" ry="15" fill="${dark}"/>
    </g>`;
  const lower = `
    <rect x="-44" y="-66" width="88" height="76" fill="${paint}"/><rect x="10" y="-66" width="34" height="76" fill="${dark}"/>
    <ellipse cx="0" cy="-66" rx="66" ry="16" fill="#7b8085"/>
    ${parted ? '<ellipse cx="0" cy="-66" rx="40" ry="9" fill="#22262a"/><rect x="-6" y="-104" width="12" height="42" fill="#a9aeb3"/>' : ''}
    ${[-54, -30, 0, 30, 54].map((x) => `<rect x="${x - 5}" y="-${parted ? 62 : 74}" width="10" height="${parted ? 8 : 16}" fill="#4d5257"/>`).join('')}`;
  return `<g>${lower}${upper}</g>`;
}

const ground = (scene: Scene): string => {
  const night = scene.light === 'night';
  return scene.ground === 'curb'
    ? `<rect y="560" width="1200" height="340" fill="${night ? '#3a3d42' : '#8f9291'}"/><rect y="560" width="1200" height="26" fill="${night ? '#55585d' : '#c5c6c2'}"/><rect y="700" width="1200" height="200" fill="${night ? '#25282c' : '#5b5e61'}"/><g fill="${night ? '#8a8256' : '#e3d48a'}">${[80, 400, 720, 1040].map((x) => `<rect x="${x}" y="800" width="170" height="12"/>`).join('')}</g>`
    : `<rect y="540" width="1200" height="360" fill="${night ? '#232d22' : scene.light === 'dusk' ? '#66704a' : '#7d9a5c'}"/><rect y="740" width="1200" height="160" fill="${night ? '#25282c' : '#606365'}"/>`;
};

const cone = (x: number, y: number): string =>
  `<path d="M${x} ${y - 96} L${x + 36} ${y} L${x - 36} ${y} Z" fill="#e8702a"/><path d="M${x - 16} ${y - 54} L${x + 16} ${y - 54} L${x + 24} ${y - 32} L${x - 24} ${y - 32} Z" fill="#f4f1ea"/><rect x="${x - 46}" y="${y - 6}" width="92" height="12" rx="4" fill="#d8611c"/>`;

const jet = `<g opacity="0.85"><path d="M560 520 C540 300 470 180 380 240 M600 520 C600 240 600 120 600 90 M640 520 C660 300 740 180 830 240" stroke="#dfeaf4" stroke-width="30" fill="none" stroke-linecap="round"/><ellipse cx="600" cy="640" rx="420" ry="60" fill="#bcd0e2" opacity="0.5"/></g>`;

function rule(x: number, y: number): string {
  const marks = Array.from(
    { length: 49 },
    (_, i) =>
      `<rect x="${x + 16 + i * 15}" y="${y}" width="${i % 4 === 0 ? 3 : 1.5}" height="${i % 4 === 0 ? 34 : 18}" fill="#26292c"/>`,
  ).join('');
  const numbers = Array.from(
    { length: 12 },
    (_, i) =>
      `<text x="${x + 16 + (i + 1) * 60}" y="${y + 62}" font-size="26" text-anchor="middle" fill="#26292c" font-family="sans-serif">${i + 1}</text>`,
  ).join('');
  return `<g><rect x="${x}" y="${y}" width="760" height="78" fill="#f1dd9a" stroke="#8a7a44" stroke-width="2"/>${marks}${numbers}</g>`;
}

function subject(scene: Scene): string {
  switch (scene.view) {
    case 'overall':
      return `<path d="M-20 ${scene.ground === 'curb' ? 850 : 880} Q 300 760 560 640" stroke="rgba(15,15,15,0.55)" stroke-width="26" fill="none"/>${scene.jet ? jet : ''}<g transform="translate(600 620)">${hydrant(scene.paint, true)}</g>${cone(250, 720)}${cone(960, 720)}`;
    case 'mid':
      return `<g transform="translate(480 760) scale(2.3)">${hydrant(scene.paint, true)}</g>`;
    case 'scale':
      return `<g transform="translate(600 560) scale(3.4)"><ellipse cx="0" cy="0" rx="92" ry="34" fill="${scene.paint}"/><ellipse cx="0" cy="-6" rx="86" ry="30" fill="#7b8085"/><ellipse cx="0" cy="-6" rx="48" ry="16" fill="#1f2326"/><rect x="-8" y="-64" width="16" height="60" fill="#b4b9be"/><path d="M-8 -64 L-2 -74 L4 -66 L8 -72 L8 -58 L-8 -56 Z" fill="#b4b9be"/>${[-70, -40, 40, 70].map((x) => `<path d="M${x - 6} -8 L${x} -22 L${x + 6} -8 Z" fill="#3f4448"/>`).join('')}</g>${rule(220, 740)}`;
    case 'repaired':
      return `<g transform="translate(600 700) scale(1.7)">${hydrant(scene.paint, false)}</g>${cone(220, 760)}`;
  }
}

/** The scene as an SVG of 1200 × 900. */
export function svgOf(scene: Scene): string {
  const [top, low] = skies[scene.light];
  const shade = scene.light === 'night' ? 'rgba(8,12,24,0.42)' : 'rgba(0,0,0,0)';
  return `<svg xmlns="http://www.w3.org/2000/svg" width="1200" height="900" viewBox="0 0 1200 900">
    <defs><linearGradient id="sky" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="${top}"/><stop offset="1" stop-color="${low}"/></linearGradient>
    <radialGradient id="lamp" cx="0.5" cy="0.62" r="0.55"><stop offset="0" stop-color="rgba(255,236,190,0.45)"/><stop offset="1" stop-color="rgba(255,236,190,0)"/></radialGradient></defs>
    <rect width="1200" height="900" fill="url(#sky)"/>
    <g fill="rgba(40,45,55,0.35)"><rect x="40" y="330" width="210" height="240"/><rect x="270" y="390" width="150" height="180"/><rect x="820" y="300" width="180" height="270"/><rect x="1020" y="400" width="160" height="170"/></g>
    ${ground(scene)}<rect width="1200" height="900" fill="${shade}"/>${subject(scene)}
    ${scene.light === 'night' ? '<rect width="1200" height="900" fill="url(#lamp)"/>' : ''}
    <rect x="0" y="852" width="1200" height="48" fill="rgba(0,0,0,0.55)"/><text x="24" y="885" font-family="sans-serif" font-size="26" fill="#fff">Drawing for demonstration — ${scene.stamp}</text></svg>`;
}
