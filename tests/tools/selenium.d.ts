/** What is used here of selenium-webdriver, which brings no types. */
declare module 'selenium-webdriver' {
  export interface Rectangle {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  }
  export interface Found {
    click(): Promise<void>;
    sendKeys(keys: string): Promise<void>;
  }
  export interface Session {
    get(url: string): Promise<void>;
    navigate(): { refresh(): Promise<void> };
    findElement(by: unknown): Promise<Found>;
    executeScript<T>(script: string, ...given: readonly unknown[]): Promise<T>;
    executeAsyncScript<T>(script: string, ...given: readonly unknown[]): Promise<T>;
    /** A PNG in base 64. */
    takeScreenshot(): Promise<string>;
    manage(): {
      setTimeouts(ms: Readonly<Record<'script' | 'pageLoad' | 'implicit', number>>): Promise<void>;
      window(): { setRect(to: Rectangle): Promise<void> };
    };
    quit(): Promise<void>;
  }
  export class Capabilities {
    constructor(wanted: Readonly<Record<string, unknown>>);
  }
  export class Builder {
    usingServer(url: string): this;
    withCapabilities(wanted: Capabilities): this;
    build(): Promise<Session>;
  }
  export const By: { xpath(path: string): unknown };
}
