import type { Locator, Page } from 'playwright-core';

/** What a control is called by: its role, and its accessible name or a part of it. */
export interface Control {
  readonly role: Parameters<Page['getByRole']>[0];
  readonly name: string | RegExp;
}

/** How many stops of the Tab key a control may be away at most, unless told otherwise. */
const FAR = 40;
/** What comes faster, in milliseconds, is a scanner's: a hand takes longer between two keys. */
const HAND = 80;

/** What keys go to: a page, or the part of one that a frame shows. */
export type Keyed = Pick<Page, 'keyboard' | 'getByRole' | 'evaluate' | 'waitForTimeout'>;

/** A person who has no mouse: everything in a page is done by keys, and a control that can't be reached is a fault. */
export class Keyboard {
  readonly #page: Keyed;

  constructor(page: Keyed) {
    this.#page = page;
  }

  /** Presses keys, one after the other, such as Enter or Shift+Tab. */
  async press(...keys: string[]): Promise<void> {
    for (const key of keys) await this.#page.keyboard.press(key);
  }

  /** Types text into what has the focus, in place of what stands there. */
  async type(text: string): Promise<void> {
    await this.#page.keyboard.press('Control+A');
    if (text === '') await this.#page.keyboard.press('Delete');
    else await this.#page.keyboard.type(text);
  }

  /** Goes with Tab until a control has the focus. Fails where it isn't among the next stops. */
  async tabTo(control: Control, { most = FAR, back = false } = {}): Promise<void> {
    const target = this.control(control);
    const passed: string[] = [];
    if (await isFocused(target)) return;
    for (let stops = 0; stops < most; stops += 1) {
      await this.#page.keyboard.press(back ? 'Shift+Tab' : 'Tab');
      if (await isFocused(target)) return;
      passed.push(await this.focused());
    }
    throw new Error(
      `${control.role} ${String(control.name)} is not among the next ${most} stops of the Tab key: ${passed.join(' | ')}`,
    );
  }

  /** Goes to a control with Tab and presses Enter on it. */
  async activate(
    control: Control,
    options: { readonly most?: number; readonly back?: boolean } = {},
  ): Promise<void> {
    await this.tabTo(control, options);
    await this.#page.keyboard.press('Enter');
  }

  /** Goes to a field with Tab and types into it, in place of what stands there. */
  async fill(label: string | RegExp, text: string, role: Control['role'] = 'textbox'): Promise<void> {
    await this.tabTo({ role, name: label });
    await this.type(text);
  }

  /** Opens a section: to the row of tabs, and there its first letter. */
  async openSection(name: 'Today' | 'Log' | 'Stock' | 'Make' | 'Quote' | 'Buy'): Promise<void> {
    const tabs = this.#page.getByRole('tab', { selected: true });
    // Escape first closes what is open, one thing at a time; what was closed may call the focus back a moment later.
    for (let closed = 0; closed < 8; closed += 1) {
      if (await isFocused(tabs)) {
        await this.#page.waitForTimeout(HAND);
        if (await isFocused(tabs)) break;
      }
      if ((await this.focused()) === 'BODY') await this.#page.keyboard.press('Tab');
      else await this.#page.keyboard.press('Escape');
    }
    await this.#page.keyboard.press(name.charAt(0).toLowerCase());
    await this.#page.getByRole('tab', { name, selected: true }).waitFor();
  }

  /** A control by its role and name; a name that is a text is the whole of it. */
  control({ role, name }: Control): Locator {
    return this.#page.getByRole(role, { name, exact: true });
  }

  isOn(control: Control): Promise<boolean> {
    return isFocused(this.control(control));
  }

  /** What has the focus, in short; BODY where nothing has. */
  focused(): Promise<string> {
    return this.#page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return 'BODY';
      const label = element.getAttribute('aria-label') ?? element.textContent;
      const own = label === '' ? element.id : label;
      return `${element.tagName.toLowerCase()} ${own.replaceAll(/\s+/g, ' ').slice(0, 60)}`;
    });
  }
}

function isFocused(target: Locator): Promise<boolean> {
  return target.evaluateAll((elements) => elements.some((element) => element === document.activeElement));
}
