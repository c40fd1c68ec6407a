import { act } from "react";

/** Stands in for the browser's EventSource; what the server sends is pushed by the test. */
export class FakeSource extends EventTarget {
  static last: FakeSource;
  static readonly CLOSED = 2;
  readyState = 1;
  onopen: (() => void) | null = null;
  onerror: (() => void) | null = null;
  constructor(readonly url: string) {
    super();
    FakeSource.last = this;
  }
  push(name: string, data: object) {
    act(() => {
      this.dispatchEvent(new MessageEvent(name, { data: JSON.stringify(data) }));
    });
  }
  close() {
    this.readyState = 2;
  }
}
