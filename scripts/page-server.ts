import { createReadStream, statSync } from "node:fs";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { type AddressInfo } from "node:net";
import { extname, join, resolve, sep } from "node:path";

/** A running server and the address to open. */
export interface PageServer {
  readonly address: string;
  close(): Promise<void>;
}

/**
 * Serves the files of a folder to this machine only: on the loopback address, under the names 127.0.0.1 and localhost.
 * @param port the first port to try; when it is taken the next ones are tried, 0 lets the system choose
 * @throws Error when the folder is missing or none of 20 ports is free
 */
export async function servePage(folder: string, port: number): Promise<PageServer> {
  const root = resolve(folder);
  if (!statSync(root, { throwIfNoEntry: false })?.isDirectory()) throw new Error(`There is no folder ${root}: run npm run build first.`);
  const server = createServer((request, response) => {
    answer(root, request, response);
  });
  await listen(server, port);
  const { port: got } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${String(got)}/`,
    close: () =>
      new Promise((done) => {
        server.close(() => { done(); });
        server.closeAllConnections();
      }),
  };
}

const portsToTry = 20;

async function listen(server: Server, first: number): Promise<void> {
  for (let port = first; ; port++) {
    try {
      await listenOn(server, port);
      return;
    } catch (problem) {
      if ((problem as NodeJS.ErrnoException).code !== "EADDRINUSE" || port - first + 1 >= portsToTry) throw problem;
    }
  }
}

const listenOn = (server: Server, port: number): Promise<void> =>
  new Promise((done, failed) => {
    server.once("error", failed);
    server.listen(port, "127.0.0.1", () => {
      server.off("error", failed);
      done();
    });
  });

/**
 * The grid makes a function of each formula it meets, and sets style attributes from its templates, so its page needs an unsafe
 * word for each (docs/decisions/content-security.md); nothing may come from or go to another host. The add-in's page needs neither.
 */
const contentSecurityPolicy =
  "default-src 'none'; script-src 'self' 'unsafe-eval'; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' data: blob:; " +
  "font-src 'self'; connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

const headers = {
  "Content-Security-Policy": contentSecurityPolicy,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Cache-Control": "no-cache",
};

function answer(root: string, request: IncomingMessage, response: ServerResponse): void {
  const refuse = (status: number, sentence: string): void => {
    response.writeHead(status, { ...headers, "Content-Type": "text/plain; charset=utf-8" }).end(`${sentence}\n`);
  };
  // Another site's name that was made to lead here must not read the page.
  if (!isOurName(request.headers.host)) {
    refuse(403, "This server answers to 127.0.0.1 and localhost only.");
    return;
  }
  if (request.method !== "GET" && request.method !== "HEAD") {
    refuse(405, "There is nothing to send here.");
    return;
  }
  const file = fileFor(root, request.url ?? "/");
  const size = file === undefined ? undefined : fileSize(file);
  if (file === undefined || size === undefined) {
    refuse(404, "There is no such page.");
    return;
  }
  response.writeHead(200, { ...headers, "Content-Type": contentType(file), "Content-Length": size });
  if (request.method === "HEAD") response.end();
  else createReadStream(file).pipe(response);
}

const isOurName = (host: string | undefined): boolean => /^(127\.0\.0\.1|localhost)(:\d+)?$/i.test(host ?? "");

/** The file of an address, or undefined when it leads out of the folder or cannot be read. */
function fileFor(root: string, url: string): string | undefined {
  try {
    const path = decodeURIComponent(url.split(/[?#]/)[0] ?? "/");
    if (path.includes("\0")) return undefined;
    const file = resolve(join(root, path.endsWith("/") ? `${path}index.html` : path));
    return file.startsWith(root + sep) ? file : undefined;
  } catch {
    return undefined;
  }
}

function fileSize(file: string): number | undefined {
  const stats = statSync(file, { throwIfNoEntry: false });
  return stats?.isFile() ? stats.size : undefined;
}

const contentTypes: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8", ".map": "application/json; charset=utf-8", ".xml": "application/xml; charset=utf-8",
  ".txt": "text/plain; charset=utf-8", ".png": "image/png", ".svg": "image/svg+xml", ".wasm": "application/wasm",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

const contentType = (file: string): string => contentTypes[extname(file).toLowerCase()] ?? "application/octet-stream";
