import { useEffect, useState } from 'preact/hooks';

/** The present time, anew at each full minute and whenever the page comes back to the front; nothing else ticks. */
export function useMinute(): Date {
  const [now, setNow] = useState(() => new Date());
  useEffect(() => {
    const look = (): void => setNow(new Date());
    let timer: ReturnType<typeof setTimeout>;
    const next = (): void => {
      timer = setTimeout(
        () => {
          look();
          next();
        },
        60_000 - (Date.now() % 60_000) + 50,
      );
    };
    next();
    document.addEventListener('visibilitychange', look);
    return () => {
      clearTimeout(timer);
      document.removeEventListener('visibilitychange', look);
    };
  }, []);
  return now;
}
