/** How far the damage goes, from a breakaway repair to a dig. */
export const damageClasses = [
  'breakaway-kit',
  'nozzle-section',
  'lower-barrel',
  'below-grade',
  'main',
  'replace-whole',
] as const;
export type DamageClass = (typeof damageClasses)[number];
export const isDamageClass = (value: unknown): value is DamageClass =>
  (damageClasses as readonly unknown[]).includes(value);
