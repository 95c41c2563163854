/** Where this device is, WGS 84, with the radius the device claims (metres). */
export type Located =
  | {
      readonly ok: true;
      readonly latitudeDeg: number;
      readonly longitudeDeg: number;
      readonly accuracyM: number;
    }
  | { readonly ok: false; readonly why: 'denied' | 'failed' };

/** Asks the device once. A position of the last half minute is good enough to find a hydrant by. */
export function locate(): Promise<Located> {
  return new Promise((resolve) => {
    if (!('geolocation' in navigator)) {
      resolve({ ok: false, why: 'failed' });
      return;
    }
    navigator.geolocation.getCurrentPosition(
      ({ coords }) =>
        resolve({
          ok: true,
          latitudeDeg: coords.latitude,
          longitudeDeg: coords.longitude,
          accuracyM: coords.accuracy,
        }),
      ({ code }) => resolve({ ok: false, why: code === 1 ? 'denied' : 'failed' }),
      { enableHighAccuracy: true, timeout: 15_000, maximumAge: 30_000 },
    );
  });
}
