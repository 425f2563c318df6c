// Runs the code cells of a notebook in the Deno kernel, with npm packages alone: it speaks the Jupyter protocol over
// zeromq. The kernel is started detached, so that its whole group can be ended.
import { spawn } from 'node:child_process';
import { createHmac, randomUUID } from 'node:crypto';
import { createServer } from 'node:net';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Dealer, Subscriber } from 'zeromq';

const deno = join(dirname(createRequire(import.meta.url).resolve('deno-bin/package.json')), 'bin.cjs');

/** A port that is free now. */
function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}

/**
 * Runs cells in order in one kernel.
 *
 * @param {readonly string[]} cells source of each code cell
 * @param {string} folder working directory, from which imports are resolved
 * @param {number} seconds time for all of it
 * @returns {Promise<{ outputs: object[], error: string | null }[]>} nbformat outputs of each cell
 */
export async function runCells(cells, folder, seconds = 90) {
  const home = await mkdtemp(join(tmpdir(), 'notebook-'));
  const [shell, iopub, stdin, control, heartbeat] = await Promise.all([1, 2, 3, 4, 5].map(freePort));
  const key = randomUUID();
  const connection = join(home, 'connection.json');
  await writeFile(
    connection,
    JSON.stringify({
      shell_port: shell,
      iopub_port: iopub,
      stdin_port: stdin,
      control_port: control,
      hb_port: heartbeat,
      ip: '127.0.0.1',
      key,
      transport: 'tcp',
      signature_scheme: 'hmac-sha256',
      kernel_name: 'deno',
    }),
  );
  const kernel = spawn(process.execPath, [deno, 'jupyter', '--kernel', '--conn', connection], {
    cwd: folder,
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, NO_COLOR: '1', DENO_NO_UPDATE_CHECK: '1' },
  });
  let said = '';
  kernel.stderr.on('data', (chunk) => (said += chunk));
  kernel.stdout.on('data', (chunk) => (said += chunk));
  const requests = new Dealer({ linger: 0 });
  const news = new Subscriber({ linger: 0, receiveTimeout: seconds * 1000 });
  const timer = setTimeout(() => end(), seconds * 1000);
  const end = () => {
    try {
      process.kill(-kernel.pid, 'SIGKILL');
    } catch {
      // already gone
    }
  };
  try {
    requests.connect(`tcp://127.0.0.1:${shell}`);
    news.connect(`tcp://127.0.0.1:${iopub}`);
    news.subscribe();
    const session = randomUUID();
    const send = async (type, content) => {
      const header = {
        msg_id: randomUUID(),
        session,
        username: 'test',
        date: new Date().toISOString(),
        msg_type: type,
        version: '5.3',
      };
      const parts = [header, {}, {}, content].map((part) => JSON.stringify(part));
      const signature = createHmac('sha256', key).update(parts.join('')).digest('hex');
      await requests.send(['<IDS|MSG>', signature, ...parts]);
      return header.msg_id;
    };
    const inbox = inboxOf(news);
    // The first news can be lost before the subscription stands: ask until the kernel answers.
    for (let heard = false; !heard;) {
      const id = await send('kernel_info_request', {});
      heard = await Promise.race([
        inbox.take(id).then(() => true),
        new Promise((resolve) => setTimeout(resolve, 500, false)),
      ]);
    }
    const results = [];
    for (const code of cells) {
      const id = await send('execute_request', {
        code,
        silent: false,
        store_history: true,
        user_expressions: {},
        allow_stdin: false,
        stop_on_error: true,
      });
      results.push(await collect(inbox, id));
      if (results.at(-1).error !== null) break;
    }
    return results;
  } catch (error) {
    throw new Error(`the kernel did not answer (${error.message}); it said: ${said.slice(-2000)}`, { cause: error });
  } finally {
    clearTimeout(timer);
    requests.close();
    news.close();
    end();
    await rm(home, { recursive: true, force: true });
  }
}

function read(frames) {
  const texts = frames.map((frame) => frame.toString('utf8'));
  const at = texts.indexOf('<IDS|MSG>');
  return { header: JSON.parse(texts[at + 2]), parent: JSON.parse(texts[at + 3]), content: JSON.parse(texts[at + 5]) };
}

/** Reads all news in one place and hands each message to whoever waits for what it answers. */
function inboxOf(news) {
  const kept = new Map();
  const waiting = new Map();
  let broken = null;
  void (async () => {
    try {
      for await (const frames of news) {
        const message = read(frames);
        const id = message.parent.msg_id;
        const resolve = waiting.get(id);
        if (resolve === undefined) kept.set(id, [...(kept.get(id) ?? []), message]);
        else {
          waiting.delete(id);
          resolve.resolve(message);
        }
      }
    } catch (error) {
      broken = error;
      for (const { reject } of waiting.values()) reject(error);
    }
  })();
  return {
    /** Messages that have come and that nobody waited for. */
    drain(id) {
      const found = kept.get(id) ?? [];
      kept.delete(id);
      return found;
    },
    /** The next message that answers a request. */
    take(id) {
      const [first, ...rest] = kept.get(id) ?? [];
      if (first !== undefined) {
        kept.set(id, rest);
        return Promise.resolve(first);
      }
      if (broken !== null) return Promise.reject(broken);
      return new Promise((resolve, reject) => waiting.set(id, { resolve, reject }));
    },
  };
}

async function collect(inbox, id) {
  const outputs = [];
  let error = null;
  const take = ({ header, content }) => {
    if (header.msg_type === 'stream') outputs.push({ output_type: 'stream', name: content.name, text: content.text });
    else if (header.msg_type === 'display_data') {
      outputs.push({ output_type: 'display_data', data: content.data, metadata: {} });
    } else if (header.msg_type === 'execute_result') {
      outputs.push({ output_type: 'execute_result', data: content.data, execution_count: null, metadata: {} });
    } else if (header.msg_type === 'error') {
      error = `${content.ename}: ${content.evalue}\n${(content.traceback ?? []).join('\n')}`;
    }
    return header.msg_type === 'status' && content.execution_state === 'idle';
  };
  while (!take(await inbox.take(id)));
  // The kernel may say that it is idle a moment before it sends the result.
  await new Promise((resolve) => setTimeout(resolve, outputs.length === 0 ? 400 : 50));
  for (const late of inbox.drain(id)) take(late);
  return { outputs, error };
}

/** The sources of a notebook's code cells. */
export function codeOf(notebook) {
  return notebook.cells.filter((cell) => cell.cell_type === 'code').map((cell) => [cell.source].flat().join(''));
}
