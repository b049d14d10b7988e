/** Collects a programme in the LP text format. */
export class Programme {
  readonly costs: string[] = [];
  readonly rows: string[] = [];
  readonly binaries: string[] = [];

  cost(factor: number, name: string): void {
    if (factor !== 0) this.costs.push(`+ ${factor} ${name}`);
  }

  row(text: string): void {
    this.rows.push(` r${this.rows.length}: ${text}`);
  }

  choice(name: string): string {
    this.binaries.push(name);
    return name;
  }

  text(atMost: number): string {
    const cut = ` cut: ${this.costs.join(' ')} <= ${atMost}`;
    return `Minimize\n obj: ${this.costs.join(' ')}\nSubject To\n${cut}\n${this.rows.join('\n')}\nBinary\n${this.binaries.join(' ')}\nEnd\n`;
  }
}
