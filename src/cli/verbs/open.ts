import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

import { wrongUse, type Arguments } from '../arguments.ts';
import type { Io } from '../io.ts';
import type { Outcome } from '../outcome.ts';
import { serveFolder } from '../serve.ts';

const usualPort = 4173;

/** `open`: serves the built app from this computer and keeps running until it is stopped. */
export async function runOpen(io: Io, given: Arguments): Promise<Outcome> {
  const folder = ['../build', '../../../build']
    .map((path) => fileURLToPath(new URL(path, import.meta.url)))
    .find((path) => existsSync(`${path}/index.html`));
  if (folder === undefined)
    return {
      kind: 'refused',
      findings: [
        wrongUse('open', 'The app is not built yet.', 'Run `npm start`, which builds it and opens it.'),
      ],
    };
  const first = given.port ?? usualPort;
  const serving = await serveFolder(folder, first);
  if (serving === null)
    return {
      kind: 'refused',
      findings: [
        wrongUse('--port', `Port ${first} and the next ones are all taken.`, 'Name another with --port.'),
      ],
    };
  const { server, port } = serving;
  (given.json ? io.say : io.answer)(`Joggle is open at http://localhost:${port}\n`);
  if (port !== first)
    io.say(
      `Port ${first} is taken, perhaps by a Joggle that is open already. Browsers keep projects under the address: those kept at http://localhost:${first} are not seen at this one.\n`,
    );
  await new Promise<void>((resolve) => {
    const close = (): void => {
      server.close(() => resolve());
      server.closeAllConnections();
    };
    process.once('SIGINT', close);
    process.once('SIGTERM', close);
  });
  return { kind: 'done', document: { findings: [] }, text: '', findings: [] };
}
