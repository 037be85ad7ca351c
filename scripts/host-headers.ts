/** The headers that whoever serves the built add-in must send, as a file that many static hosts read. */

/** A page of the built folder and its text. */
export interface BuiltPage {
  readonly name: string;
  readonly text: string;
}

/**
 * One block for all files, and one for each page with the content security policy that stands in the page itself.
 * Nothing forbids a frame around the pages: Excel shows them in one.
 * @throws Error when a page has no policy
 */
export const hostHeaders = (pages: readonly BuiltPage[]): string =>
  [block("/*", everyFile), block("/functions.json", functionsFile), ...pages.map(({ name, text }) => block(`/${name}`, [`Content-Security-Policy: ${policyOf(name, text)}`]))].join("\n");

const block = (path: string, headers: readonly string[]): string => `${path}\n${headers.map((header) => `  ${header}\n`).join("")}`;

/** File names stay the same from one version to the next, so a browser must ask whether its copy is still good. */
const everyFile = ["Cache-Control: no-cache", "X-Content-Type-Options: nosniff", "Referrer-Policy: no-referrer", "Strict-Transport-Security: max-age=31536000"];

/** Excel on the web reads the list of functions from its own address, which a browser allows with this only. */
const functionsFile = ["Access-Control-Allow-Origin: *"];

function policyOf(name: string, text: string): string {
  const policy = /<meta http-equiv="?Content-Security-Policy"? content="([^"]+)"/.exec(text)?.[1];
  if (policy === undefined) throw new Error(`${name} has no content security policy.`);
  return policy;
}
