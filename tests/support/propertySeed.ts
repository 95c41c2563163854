import fc from 'fast-check';

const seed = Number(process.env['PROPERTY_SEED']);
if (!Number.isSafeInteger(seed)) throw new Error('PROPERTY_SEED must be a whole number');
/** Every property that names no seed of its own draws its cases from this one. */
fc.configureGlobal({ seed });
