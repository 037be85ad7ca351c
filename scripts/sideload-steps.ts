/** How each system is told of an add-in, as the platform's guide to sideloading has it. */

/** What the steps need of a computer, so that tests can be one. */
export interface Computer {
  readonly platform: string;
  readonly home: string;
  exists(path: string): boolean;
  read(path: string): string;
  /** Makes the folder when it is not there. */
  copy(from: string, folder: string, name: string): void;
  remove(path: string): void;
  succeeds(program: string, words: readonly string[]): boolean;
}

/**
 * @param remove takes the add-in away again
 * @returns what was done and what to do next
 * @throws Error with a plain sentence when there is nothing to sideload or no Excel
 */
export function sideload(computer: Computer, manifest: string, remove: boolean): string {
  if (!computer.exists(manifest)) throw new Error("The add-in is not built yet. Run npm run build -- --origin https://YOUR-HOST first.");
  const text = computer.read(manifest);
  const built: Built = { manifest, id: firstMatch(text, /<Id>([^<]+)<\/Id>/), host: new URL(firstMatch(text, /<SourceLocation DefaultValue="([^"]+)"/)).origin };
  if (computer.platform === "darwin") return onMac(computer, built, remove);
  if (computer.platform === "win32") return onWindows(computer, built, remove);
  throw new Error(`There is no Excel for this system. Take the file to one that has it, or use Excel on the web: ${onTheWeb} The file is ${manifest}. ${served(built)}`);
}

interface Built {
  readonly manifest: string;
  readonly id: string;
  readonly host: string;
}

function onMac({ home, exists, copy, remove: take }: Computer, built: Built, remove: boolean): string {
  const container = `${home}/Library/Containers/com.microsoft.Excel`;
  if (!exists(container)) throw new Error(`There is no Excel on this Mac, or it was never opened: ${container} is missing.`);
  const [folder, name] = [`${container}/Data/Documents/wef`, `${built.id}.manifest.xml`];
  if (remove) {
    take(`${folder}/${name}`);
    return "Plumbline is taken away. Close Excel and open it again.";
  }
  copy(built.manifest, folder, name);
  return `Copied to ${folder}/${name}. Close Excel and open it again; Plumbline is under Home, Add-ins, among the developer add-ins. ${served(built)}`;
}

/** Where Excel looks for add-ins of whoever develops them. */
const developerKey = "HKCU\\Software\\Microsoft\\Office\\16.0\\WEF\\Developer";

function onWindows({ succeeds }: Computer, built: Built, remove: boolean): string {
  if (!succeeds("reg", ["query", "HKCR\\Excel.Application"])) throw new Error("There is no Excel on this computer. Plumbline can be tried in Excel on the web: " + onTheWeb);
  const words = remove ? ["delete", developerKey, "/v", built.id, "/f"] : ["add", developerKey, "/v", built.id, "/t", "REG_SZ", "/d", built.manifest, "/f"];
  if (!succeeds("reg", words)) throw new Error(remove ? "Plumbline was not known to Excel here." : "The registry did not take the entry. Is it closed to you by whoever looks after this computer?");
  return remove
    ? "Plumbline is taken away. Close Excel and open it again."
    : `Excel is told of ${built.manifest}. Close Excel and open it again; Plumbline is on the Home tab, or under Home, Add-ins, More Add-ins, Developer. ${served(built)}`;
}

const onTheWeb = "open a workbook, choose Home, Add-ins, More Add-ins, My Add-ins, Upload My Add-in, and give it dist/addin/manifest.xml.";

const served = ({ host }: Built): string => `Its pages must be served at ${host}.`;

function firstMatch(text: string, pattern: RegExp): string {
  const found = pattern.exec(text)?.[1];
  if (found === undefined) throw new Error("The built manifest is damaged: build again.");
  return found;
}
