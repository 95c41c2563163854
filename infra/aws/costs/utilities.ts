/** A utility to reckon for, and what its people do: the only figures of the bill that are guessed. */
export interface ReckonedUtility {
  readonly name: string;
  readonly hydrants: number;
  readonly strikesAYear: number;
  /** People who sign in. */
  readonly people: number;
  /** Pages that the public opens in a month. */
  readonly pageViews: number;
  /** Screens on a wall that load the page anew each minute, day and night. */
  readonly wallScreens: number;
}

export const reckonedUtilities: readonly ReckonedUtility[] = [
  { name: 'Town', hydrants: 500, strikesAYear: 20, people: 6, pageViews: 2_000, wallScreens: 1 },
  { name: 'City', hydrants: 60_000, strikesAYear: 800, people: 80, pageViews: 40_000, wallScreens: 3 },
  { name: 'Large', hydrants: 250_000, strikesAYear: 4_000, people: 300, pageViews: 150_000, wallScreens: 10 },
];

/** How much is looked at, kept and sent, whatever the size. */
export const habits = {
  /** A phone's photo as it comes from the camera. */
  photoMb: 3,
  photosAStrike: 8,
  /** How often each screen is opened in the life of one strike. */
  viewsOfEachScreenAStrike: 10,
  /** Days that a struck hydrant is out, with as many again out for other causes. */
  daysOut: 9,
  /** Requests and kB of one opened page, what the browser has kept apart. */
  requestsAPageView: 4,
  kbAPageView: 60,
  /** Messages to dispatch a strike: out and back, each by mail and by text. */
  mailsAStrike: 2,
  textsAStrike: 2,
  /** Letters of deadlines a day. */
  lettersADay: 2,
} as const;

/**
 * What Lambda writes of a call besides our own lines, the gateway of a request, and the publisher of a publication,
 * bytes (from memory).
 */
export const logBytes = { call: 700, request: 250, publication: 250 } as const;

/** What a request to a store takes, ms, as a function in the same region waits for it (common practice, no source). */
export const waitMs = { table: 5, object: 25 } as const;

/** How many of them a publication has under way at once, as `functions/publish` makes them. */
export const publishingAtOnce = { table: 16, object: 32 } as const;
