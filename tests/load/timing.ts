import { percentile } from "../bench/percentile";

interface Asked {
  readonly status: number;
  // biome-ignore lint/suspicious/noExplicitAny: what a route answers is looked at by whoever asked
  readonly body: any;
}

/** How long one kind of request takes, and what is answered beside what should be. */
export class Timing {
  private readonly took: number[] = [];
  private readonly wrong = new Map<string, number>();

  constructor(private readonly name: string) {}

  get errors(): number {
    return [...this.wrong.values()].reduce((sum, count) => sum + count, 0);
  }

  /** Sends it, and counts whatever is not answered as well. */
  async of(send: () => Promise<Asked>): Promise<Asked | null> {
    const begun = performance.now();
    try {
      const answer = await send();
      this.took.push(performance.now() - begun);
      if (answer.status >= 300) this.note(`${answer.status} ${answer.body?.code ?? ""}`);
      return answer;
    } catch (error) {
      this.note(error instanceof Error ? error.message : String(error));
      return null;
    }
  }

  private note(what: string): void {
    this.wrong.set(what, (this.wrong.get(what) ?? 0) + 1);
  }

  toString(): string {
    const { took } = this;
    const wrong = [...this.wrong].map(([what, count]) => `${count} x ${what}`).join(", ") || "none";
    if (took.length === 0) return `${this.name}: none sent; errors ${wrong}`;
    const at = (share: number) => percentile(took, share);
    return `${this.name}: ${took.length}, p50 ${at(0.5)} ms, p95 ${at(0.95)} ms, max ${Math.round(Math.max(...took))} ms; errors: ${wrong}`;
  }
}
