import { mirrorPicture } from '../measuring/picture/mirror-picture.ts';

/** The picture on the stage and, once it was turned over, its other side: turning back brings the same file, without loss. */
export class PictureSides {
  #shown: Blob | undefined;
  #other: Blob | undefined;

  get shown(): Blob | undefined {
    return this.#shown;
  }

  /** Takes another picture, or none. */
  put(picture: Blob | undefined): void {
    this.#shown = picture;
    this.#other = undefined;
  }

  /** Makes the other side; false where there is no picture, or another has come meanwhile. */
  async prepareOther(): Promise<boolean> {
    const shown = this.#shown;
    if (!shown) return false;
    const other = this.#other ?? (await mirrorPicture(shown));
    if (this.#shown !== shown) return false;
    this.#other = other;
    return true;
  }

  /** Turns to the other side; the same side where that was never made. */
  turn(): Blob | undefined {
    if (this.#other) [this.#shown, this.#other] = [this.#other, this.#shown];
    return this.#shown;
  }
}
