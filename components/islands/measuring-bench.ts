import { addRound, finishSpecimen, markAbsent, putPlace, tapPlace } from '../measuring/bench-edits.ts';
import { freshBench, freshMeasured, hasWork, type BenchRecord } from '../measuring/bench-record.ts';
import { ownScheme, type BenchScheme } from '../measuring/bench-scheme.ts';
import { benchWords, type BenchWords } from '../measuring/bench-words.ts';
import { startPast, stepAgain, stepBack, stepOn, type PastStates } from '../measuring/past-states.ts';
import type { Place } from '../measuring/place.ts';
import { turnOver } from '../measuring/turn-over.ts';
import {
  changedSlot,
  nextOpen,
  placeOf,
  slotKey,
  slotsOf,
  stepSlot,
  type PointSlot,
} from '../measuring/point-slots.ts';
import { listenToBench } from './measuring-bench-hands.ts';
import { slotName } from './measuring-bench-lists.ts';
import { openPicture, sayPicture } from './measuring-bench-picture.ts';
import { showBench } from './measuring-bench-show.ts';
import { PictureSides } from './measuring-bench-sides.ts';
import { BenchStage } from './measuring-bench-stage.ts';
import { forgetAll, keepPicture, keepRecord, keptPicture, keptRecord } from './measuring-bench-store.ts';
import { askFirst, download } from './measuring-bench-take.ts';

/** The bench as a whole: one record with its past, the point in hand, the cross, and what is done to them. */
export class MeasuringBench extends HTMLElement {
  words!: BenchWords;
  stage!: BenchStage;
  hand: PointSlot | undefined;
  cross: Place = [0, 0];
  kept = true;
  #schemes: readonly BenchScheme[] = [];
  #past!: PastStates<BenchRecord>;
  readonly #sides = new PictureSides();
  #merging = '';

  connectedCallback(): void {
    if (this.stage) return;
    const words = JSON.parse(this.dataset['words']!) as Record<string, string>;
    this.words = benchWords(words, document.documentElement.lang);
    this.#schemes = JSON.parse(this.dataset['schemes']!) as BenchScheme[];
    this.stage = new BenchStage(this.querySelector('[data-stage]')!, (place) => this.tap(place));
    this.#past = startPast(keptRecord() ?? this.#empty());
    this.hand = nextOpen(this.record, this.slots());
    listenToBench(this);
    this.hidden = false;
    document.querySelector<HTMLElement>('.bench-needs')!.hidden = true;
    this.show();
    void this.#bringPicture();
  }

  get record(): BenchRecord {
    return this.#past.now;
  }

  get scheme(): BenchScheme {
    const { lineage, view, ownNames, ownLengths } = this.record;
    const own = () => ownScheme(ownNames, ownLengths);
    return this.#schemes.find((each) => each.lineage === lineage && each.view === view) ?? own();
  }

  get canUndo(): boolean {
    return this.#past.before.length > 0;
  }

  get canRedo(): boolean {
    return this.#past.after.length > 0;
  }

  slots(record = this.record): PointSlot[] {
    const landmarks = this.scheme.landmarks.map(({ id }) => id);
    return slotsOf(record, landmarks);
  }

  /** Makes a change; changes that follow one another under one name are one step of undo. */
  edit(next: BenchRecord, merging = ''): void {
    const isSame = merging !== '' && merging === this.#merging;
    this.#past = isSame ? { ...this.#past, now: next, after: [] } : stepOn(this.#past, next);
    this.#merging = merging;
    this.kept = keepRecord(next) && this.kept;
    this.show();
  }

  show(): void {
    showBench(this);
  }

  say(text: string): void {
    this.querySelector('[data-said]')!.textContent = text;
  }

  /** Puts the point in hand at a place, and takes the next that waits. */
  tap(place: Place): void {
    this.cross = place;
    const slot = this.hand;
    if (!slot) return this.show();
    const next = tapPlace(this.record, slot, place);
    const isBreak = slot.kind === 'landmark' && this.record.now.absent.includes(slot.landmark);
    this.hand = isBreak ? slot : nextOpen(next, this.slots(next), slot);
    this.edit(next);
    const name = slotName(slot, this.scheme, this.words);
    const following = this.hand
      ? slotName(this.hand, this.scheme, this.words)
      : this.words.phrase('said.all');
    this.say(this.words.phrase('said.placed', { name, ...this.#at(place), next: following }));
  }

  /** Moves the cross, and with it the point in hand where that has a place. */
  nudge(step: Place): void {
    const picture = this.record.now.picture;
    if (!picture) return;
    const [x, y] = this.stage.stepFrom(this.cross, step);
    this.cross = [Math.min(picture.width, Math.max(0, x)), Math.min(picture.height, Math.max(0, y))];
    const slot = this.hand;
    this.stage.reveal(this.cross);
    if (slot && placeOf(this.record, slot)) {
      this.edit(putPlace(this.record, slot, this.cross), `nudge ${slotKey(slot)}`);
      this.say(
        this.words.phrase('said.moved', {
          name: slotName(slot, this.scheme, this.words),
          ...this.#at(this.cross),
        }),
      );
    } else {
      this.show();
      this.say(this.words.phrase('said.cross', this.#at(this.cross)));
    }
  }

  /** Takes a slot in hand; the cross goes to its place. */
  take(slot: PointSlot | undefined): void {
    this.hand = slot;
    this.#merging = '';
    const place = slot && placeOf(this.record, slot);
    if (place) {
      this.cross = place;
      this.stage.reveal(place);
    }
    this.show();
    if (slot) this.say(this.words.phrase('said.hand', { name: slotName(slot, this.scheme, this.words) }));
  }

  goBack(): void {
    this.#walk(stepBack(this.#past));
  }

  goOn(): void {
    this.#walk(stepAgain(this.#past));
  }

  #walk(past: PastStates<BenchRecord>): void {
    const before = this.record;
    this.#past = past;
    this.#merging = '';
    if (before.now.picture?.mirrored !== past.now.now.picture?.mirrored) return void this.#showOtherSide();
    this.kept = keepRecord(past.now) && this.kept;
    this.take(changedSlot(before, past.now, this.slots()) ?? nextOpen(past.now, this.slots()));
  }

  removeHeld(): void {
    if (this.hand && placeOf(this.record, this.hand)) this.edit(putPlace(this.record, this.hand, null));
    if (this.hand?.kind === 'break') this.take(nextOpen(this.record, this.slots()));
  }

  toggleAbsent(): void {
    if (this.hand?.kind !== 'landmark') return;
    const { landmark } = this.hand;
    this.edit(markAbsent(this.record, landmark, !this.record.now.absent.includes(landmark)));
  }

  step(by: number): void {
    this.take(stepSlot(this.slots(), this.hand, by));
  }

  startRound(): void {
    this.edit(addRound(this.record));
    this.take(nextOpen(this.record, this.slots()));
  }

  /** Takes another list of landmarks; what was placed under the old names goes, after asking. */
  async chooseScheme(lineage: string, view: string): Promise<void> {
    const { record } = this;
    const isUsed =
      record.finished.length > 0 || record.now.rounds.some((round) => Object.keys(round).length > 0);
    if (isUsed && !(await this.#ask('ask.scheme'))) return this.show();
    const { specimen, picture, scale, scaleMm } = record.now;
    const now = { ...freshMeasured(specimen), picture, scale, scaleMm };
    this.edit({
      ...freshBench(lineage, view),
      ownNames: record.ownNames,
      ownLengths: record.ownLengths,
      now,
    });
    this.take(nextOpen(this.record, this.slots()));
  }

  /** Opens a picture, after asking where points stand on another. */
  async open(file: File, specimen = this.record.now.specimen): Promise<void> {
    if (hasWork(this.record.now) && !(await this.#ask('ask.picture'))) return;
    const prepared = await openPicture(this, file);
    if (!prepared) return;
    const { name, width, height, blob } = prepared;
    const now = { ...freshMeasured(specimen), picture: { name, width, height } };
    await this.#put(blob, { ...this.record, now, round: 0, level: '', ownLine: [null, null] });
  }

  /** Turns the picture over with all that was placed: for a bone of the other side, so that it faces like the rest. */
  async turnOver(): Promise<void> {
    if (!(await this.#sides.prepareOther())) return;
    this.#past = stepOn(this.#past, turnOver(this.record));
    this.#merging = '';
    await this.#showOtherSide();
  }

  /** The record has turned: the picture and the cross follow, and the point in hand stays there. */
  async #showOtherSide(): Promise<void> {
    const { width, height, mirrored } = this.record.now.picture!;
    const side = this.#sides.turn()!;
    this.cross = [width - this.cross[0], this.cross[1]];
    this.stage.show(URL.createObjectURL(side), { width, height });
    sayPicture(this, [this.words.phrase(mirrored ? 'turned' : 'turnedBack')]);
    await this.#showAndKeep(side);
  }

  /** Puts a picture on the stage with what belongs to it; steps that lead back to another picture are forgotten. */
  async #put(blob: Blob, record: BenchRecord): Promise<void> {
    const { width, height } = record.now.picture!;
    this.#past = startPast(record);
    this.#sides.put(blob);
    this.cross = [width / 2, height / 2];
    this.hand = nextOpen(this.record, this.slots());
    this.stage.show(URL.createObjectURL(blob), { width, height });
    await this.#showAndKeep(blob);
  }

  /** Shown before it is kept, which takes a while: points of the last picture must not stand on this one. */
  async #showAndKeep(picture: Blob): Promise<void> {
    this.show();
    this.kept = (await keepPicture(picture)) && keepRecord(this.record);
    this.show();
  }

  savePicture(): void {
    const { picture } = this.record.now;
    if (this.#sides.shown && picture) download(this.#sides.shown, picture.name);
  }

  /** Puts the specimen aside and clears the stage for the next. */
  async finish(): Promise<void> {
    this.#past = startPast(finishSpecimen(this.record));
    await this.#clear();
    this.kept = keepRecord(this.record);
    this.show();
  }

  async forget(): Promise<void> {
    const used = hasWork(this.record.now) || this.record.finished.length > 0 || this.#sides.shown;
    if (used && !(await this.#ask('ask.forget'))) return;
    this.#past = startPast(this.#empty());
    await this.#clear();
    sayPicture(this, [this.words.phrase('forgotten')]);
  }

  async #clear(): Promise<void> {
    this.#sides.put(undefined);
    this.hand = nextOpen(this.record, this.slots());
    this.stage.show(undefined, undefined);
    sayPicture(this, []);
    this.show();
    await forgetAll();
  }

  async #bringPicture(): Promise<void> {
    const { picture } = this.record.now;
    const blob = picture ? await keptPicture() : undefined;
    if (!picture || !blob) return;
    const { name, width, height } = picture;
    this.#sides.put(blob);
    this.cross = [width / 2, height / 2];
    this.stage.show(URL.createObjectURL(blob), picture);
    sayPicture(this, [this.words.phrase('opened', { name, width, height })]);
    this.take(this.hand);
  }

  #empty(): BenchRecord {
    const [first] = this.#schemes;
    return freshBench(first?.lineage ?? '', first?.view ?? 'left-lateral');
  }

  #ask(question: string): Promise<boolean> {
    return askFirst(this.querySelector<HTMLDialogElement>('[data-ask]')!, this.words.phrase(question));
  }

  #at([x, y]: Place): { x: string; y: string } {
    return { x: this.words.number(x, 1), y: this.words.number(y, 1) };
  }
}

customElements.define('measuring-bench', MeasuringBench);
