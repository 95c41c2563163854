import type { MapCellFile, MapIndex } from '../../../../shared/public/mapIndex.ts';
import { nearPoint, type NearPoint } from '../../../../shared/public/nearPoint.ts';
import type { PublicPosition } from '../../../../shared/public/snapshot.ts';
import { ListUnread, readCell, readIndex } from './published.ts';

/** So many are named: what a crew asks for, and two in reserve. */
const WANTED = 5;
/**
 * Where there are no more hydrants than this, all cells are read, wherever the reader is: then not even the district
 * that he stands in can be told from what the page asks for (decision 0215).
 */
const READ_ALL = 5000;

export interface NearAnswer extends NearPoint {
  readonly index: MapIndex;
  /** The index could not be read anew, and this is from the one read before. */
  readonly fromBefore: boolean;
}

/** Cells as they were read, and the index that they belong to. */
export class Lists {
  #index: MapIndex | null = null;
  /** By name and stamp: a cell that did not change is not read again. */
  readonly #cells = new Map<string, MapCellFile>();

  /** Cells read so far that the index still has, by name. */
  get read(): ReadonlyMap<string, MapCellFile> {
    const cells = this.#index?.cells ?? [];
    return new Map(
      cells.flatMap(({ cell, stamp }) => {
        const found = this.#cells.get(`${cell} ${stamp}`);
        return found ? [[cell, found]] : [];
      }),
    );
  }

  get names(): readonly string[] {
    return this.#index?.cells.map(({ cell }) => cell) ?? [];
  }

  /** Reads the index anew. True when it could not be read and the one of before is kept. @throws ListUnread */
  async renew(): Promise<boolean> {
    try {
      this.#index = await readIndex();
      return false;
    } catch (error) {
      if (this.#index && error instanceof ListUnread && error.why === 'unreachable') return true;
      throw error;
    }
  }

  /** Reads the index where there is none yet. @throws ListUnread */
  async begin(): Promise<MapIndex> {
    if (!this.#index) await this.renew();
    return this.#known();
  }

  #known(): MapIndex {
    if (!this.#index) throw new ListUnread('broken');
    return this.#index;
  }

  /** Reads these cells, those that are there already left out. @throws ListUnread */
  async readCells(names: readonly string[]): Promise<void> {
    const wanted = this.#known().cells.filter(
      ({ cell, stamp }) => names.includes(cell) && !this.#cells.has(`${cell} ${stamp}`),
    );
    const found = await Promise.all(wanted.map(readCell));
    found.forEach((cell) => {
      this.#cells.set(`${cell.cell} ${cell.stamp}`, cell);
    });
  }

  /** The nearest to a point, as the service has it now. @throws ListUnread */
  async near(point: PublicPosition): Promise<NearAnswer> {
    try {
      return await this.#near(point);
    } catch (error) {
      // Replaced between the index and the cell: once more from the index on.
      if (error instanceof ListUnread && error.why === 'renewed') return this.#near(point);
      throw error;
    }
  }

  async #near(point: PublicPosition): Promise<NearAnswer> {
    const fromBefore = await this.renew();
    const index = this.#known();
    if (index.hydrants <= READ_ALL) await this.readCells(this.names);
    for (;;) {
      const answer = nearPoint(this.names, this.read, point, WANTED);
      if (answer.next === null) return { ...answer, index, fromBefore };
      await this.readCells([answer.next]);
    }
  }
}
