// What hosts hand to a widget, named once for the JSDoc of every module. Declared for the type
// checker alone: nothing here is loaded by a browser.

/** A flat fact, as goals and mistakes read it. */
type Fact = number | string | boolean | null | undefined;

/** What is true of a manipulative's state. */
type Facts = Record<string, Fact>;

/** A widget's synced state. */
interface WidgetModel<Traits extends object = Record<string, any>> {
  get<Name extends keyof Traits & string>(name: Name): Traits[Name];
  set<Name extends keyof Traits & string>(name: Name, value: Traits[Name]): void;
  save_changes(): void;
  on(event: string, callback: (...args: any[]) => void): void;
  off(event?: string | null, callback?: ((...args: any[]) => void) | null): void;
  send(content: unknown, callbacks?: unknown, buffers?: (ArrayBuffer | ArrayBufferView)[]): void;
}

/** How a widget reaches a child that it holds by reference. */
interface WidgetHost {
  getModel(ref: string): Promise<WidgetModel>;
  getWidget(ref: string): Promise<{
    render(place: { el: HTMLElement; signal?: AbortSignal }): Promise<void> | void;
  }>;
}

/** What `render` is given; `signal` is missing in hosts that have none. */
interface RenderProps<Traits extends object = Record<string, any>> {
  model: WidgetModel<Traits>;
  el: HTMLElement;
  signal?: AbortSignal;
  host: WidgetHost;
}

/** The root of a manipulative says what is true of it. */
interface HTMLElement {
  facts?: () => Facts;
}
