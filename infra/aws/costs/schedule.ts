/** How often the clock wakes what. */
export interface Schedule {
  readonly publishEveryMinutes: number;
  readonly relyForMinutes: number;
  /** First hour of the daily letters: each hour from it to the day's end wakes their function. */
  readonly digestFromHour: number;
}
