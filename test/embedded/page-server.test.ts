import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type PageServer, servePage } from "../../scripts/page-server";

const outer = mkdtempSync(join(tmpdir(), "plumbline-serve-"));
const folder = join(outer, "page");
mkdirSync(join(folder, "grid"), { recursive: true });
writeFileSync(join(outer, "secret.txt"), "secret");
writeFileSync(join(outer, "page-secret.txt"), "secret");
writeFileSync(join(folder, "index.html"), "<p>page");
writeFileSync(join(folder, "grid", "a.js"), "1");

let server: PageServer;
beforeAll(async () => {
  server = await servePage(folder, 0);
});
afterAll(() => server.close());

/** Asks with the path exactly as given; fetch would tidy it up. */
const ask = (path: string, options: { host?: string; method?: string } = {}) =>
  new Promise<{ status: number | undefined; headers: Record<string, unknown>; body: string }>((resolve, reject) => {
    const { port } = new URL(server.address);
    const headers = { host: options.host ?? `127.0.0.1:${port}` };
    request({ host: "127.0.0.1", port, path, method: options.method ?? "GET", headers }, (response) => {
      let body = "";
      response.on("data", (piece: Buffer) => { body += piece.toString(); });
      response.on("end", () => { resolve({ status: response.statusCode, headers: response.headers, body }); });
    }).on("error", reject).end();
  });

test("it serves its folder with types and a policy that keeps everything at home", async () => {
  const page = await ask("/");
  expect(page).toMatchObject({ status: 200, body: "<p>page", headers: { "content-type": "text/html; charset=utf-8", "x-content-type-options": "nosniff" } });
  expect(page.headers["content-security-policy"]).toMatch(/^default-src 'none'; script-src 'self' 'unsafe-eval'; style-src 'self'; style-src-attr 'unsafe-inline';/);
  expect(String(page.headers["content-security-policy"]).match(/unsafe-\w+/g)).toEqual(["unsafe-eval", "unsafe-inline"]); // docs/decisions/content-security.md says why
  expect(await ask("/grid/a.js?x=1")).toMatchObject({ status: 200, headers: { "content-type": "text/javascript; charset=utf-8" } });
  expect(await ask("/", { method: "HEAD" })).toMatchObject({ status: 200, body: "" });
});

test.each([["/../secret.txt"], ["/..%2fsecret.txt"], ["/%2e%2e/secret.txt"], ["/../page-secret.txt"], ["/grid/../../secret.txt"], ["/grid/"], ["/grid"], ["/nowhere"], ["/%zz"], ["/a%00.js"]])(
  "%s leads nowhere",
  async (path) => {
    expect((await ask(path)).status).toBe(404);
  },
);

test("it answers to its own names only, and to reading only", async () => {
  expect((await ask("/", { host: "example.org" })).status).toBe(403);
  expect((await ask("/", { host: "localhost:1" })).status).toBe(200);
  expect((await ask("/", { method: "POST" })).status).toBe(405);
});

test("a port that is taken moves it to the next, and a folder that is missing is said", async () => {
  const taken = Number(new URL(server.address).port);
  const second = await servePage(folder, taken);
  expect(Number(new URL(second.address).port)).toBeGreaterThan(taken);
  await second.close();
  await expect(servePage(join(outer, "none"), 0)).rejects.toThrow(/There is no folder .*none: run npm run build first/);
});
