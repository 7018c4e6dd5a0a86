import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

// The program under test: what go run ./tools/dev test has just built.
const exe = process.platform === 'win32' ? 'levigate.exe' : 'levigate';
const bin = process.env.LEVIGATE_BIN ?? resolve(import.meta.dirname, '..', '..', '..', '..', 'bin', exe);

const slowest = 20_000;

// keepsDrafts says whether the program has the API: a program without a
// workspace keeps no drafts. Once it has one, nothing here is skipped any more.
export const keepsDrafts = (): boolean => serveHelp().includes('--workspace');

export const noBench = 'levigate serve has no --workspace yet, so there is no API and no bench to try';

let help: string | undefined;
function serveHelp(): string {
  if (!existsSync(bin)) throw new Error(`${bin} is not built; go run ./tools/dev test builds it`);
  help ??= execFileSync(bin, ['serve', '--help'], { encoding: 'utf8' });
  return help;
}

// Server is one running program on a workspace of its own.
export class Server {
  private constructor(
    private readonly child: ChildProcess,
    private readonly workspace: string,
    /** The address as printed, with the token of this start. */
    readonly url: string,
    private readonly said: () => string,
  ) {}

  static async start(): Promise<Server> {
    const workspace = mkdtempSync(join(tmpdir(), 'levigate-e2e-'));
    const args = ['serve', '--addr', '127.0.0.1:0'];
    if (keepsDrafts()) args.push('--workspace', workspace);
    const child = spawn(bin, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    try {
      let said = '';
      const hear = (chunk: Buffer): void => {
        said += chunk;
      };
      child.stdout.on('data', hear);
      child.stderr.on('data', hear);
      return new Server(child, workspace, await printedAddress(child, () => said), () => said);
    } catch (err) {
      child.kill('SIGKILL');
      rmSync(workspace, { recursive: true, force: true });
      throw err;
    }
  }

  get origin(): string {
    return new URL(this.url).origin;
  }

  get pid(): number {
    return this.child.pid ?? 0;
  }

  get token(): string {
    return new URL(this.url).searchParams.get('token') ?? '';
  }

  /** The address of a page, for a browser that has been at url before. */
  at(path: string): string {
    return new URL(path, this.url).href;
  }

  /** Asks the API as a program would. */
  async api(path: string, init: RequestInit = {}): Promise<Response> {
    const headers = new Headers(init.headers);
    headers.set('Authorization', `Bearer ${this.token}`);
    if (init.body) headers.set('Content-Type', 'application/json');
    return fetch(this.at(path), { ...init, headers });
  }

  /** Ends the program as Ctrl-C does; one that ended before, or does not end, is a fault. */
  async stop(): Promise<void> {
    const { child } = this;
    try {
      if (child.exitCode !== null || child.signalCode !== null)
        throw new Error(`the program ended by itself; it said: ${this.said()}`);
      const ended = new Promise<void>((done) => child.once('exit', () => done()));
      child.kill('SIGINT');
      const hung = setTimeout(() => child.kill('SIGKILL'), 8_000);
      await ended;
      clearTimeout(hung);
      if (child.signalCode === 'SIGKILL') throw new Error('the program did not end on an interrupt');
    } finally {
      rmSync(this.workspace, { recursive: true, force: true });
    }
  }
}

// printedAddress waits for the line that says where the program is.
async function printedAddress(child: ChildProcess, said: () => string): Promise<string> {
  let failed: Error | undefined;
  child.once('error', (err) => {
    failed = err;
  });
  for (const began = Date.now(); Date.now() - began < slowest; ) {
    const address = addressIn(said());
    if (address) return address;
    if (failed) throw failed;
    if (child.exitCode !== null) throw new Error(`the program ended with ${child.exitCode}; it said: ${said()}`);
    await new Promise((wake) => setTimeout(wake, 20));
  }
  throw new Error(`no address after ${slowest / 1000} s; the program said: ${said()}`);
}

/** The address in what the program has said so far, once its line is whole. */
export function addressIn(said: string): string | undefined {
  return /(http:\/\/(?:127\.0\.0\.1|localhost|\[::1\]):\d+\/\S*)\s/.exec(said)?.[1];
}
