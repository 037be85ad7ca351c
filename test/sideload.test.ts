import { sideload, type Computer } from "../scripts/sideload-steps";

const manifest = '<OfficeApp><Id>5da4-id</Id><DefaultSettings><SourceLocation DefaultValue="https://lines.example/taskpane.html"/></DefaultSettings></OfficeApp>';

/** A computer that only notes what is done to it. */
function computer(platform: string, has: { readonly paths?: readonly string[]; readonly refuses?: RegExp } = {}): Computer & { readonly done: string[] } {
  const done: string[] = [];
  return {
    platform, done, home: "/Users/someone",
    exists: (path) => ["/built/manifest.xml", ...(has.paths ?? [])].includes(path),
    read: () => manifest,
    copy: (from, folder, name) => { done.push(`copy ${from} ${folder}/${name}`); },
    remove: (path) => { done.push(`remove ${path}`); },
    succeeds: (program, words) => {
      const line = [program, ...words].join(" ");
      done.push(line);
      return !has.refuses?.test(line);
    },
  };
}

const container = "/Users/someone/Library/Containers/com.microsoft.Excel";

test("on a Mac the manifest is copied to where Excel looks for it, and taken away again", () => {
  const mac = computer("darwin", { paths: [container] });
  expect(sideload(mac, "/built/manifest.xml", false)).toMatch(/Close Excel and open it again.*served at https:\/\/lines\.example\./);
  sideload(mac, "/built/manifest.xml", true);
  expect(mac.done).toEqual([`copy /built/manifest.xml ${container}/Data/Documents/wef/5da4-id.manifest.xml`, `remove ${container}/Data/Documents/wef/5da4-id.manifest.xml`]);
});

test("on Windows Excel is told by the registry, and told to forget it", () => {
  const windows = computer("win32");
  sideload(windows, "/built/manifest.xml", false);
  sideload(windows, "/built/manifest.xml", true);
  const key = "HKCU\\Software\\Microsoft\\Office\\16.0\\WEF\\Developer";
  expect(windows.done.filter((line) => !line.startsWith("reg query"))).toEqual([`reg add ${key} /v 5da4-id /t REG_SZ /d /built/manifest.xml /f`, `reg delete ${key} /v 5da4-id /f`]);
});

test.each<[string, Computer, string]>([
  ["a Mac without Excel", computer("darwin"), "There is no Excel on this Mac"],
  ["Windows without Excel", computer("win32", { refuses: /query/ }), "There is no Excel on this computer"],
  ["a registry that is closed", computer("win32", { refuses: /add/ }), "The registry did not take the entry"],
  ["a system without any Excel", computer("linux"), "There is no Excel for this system"],
])("%s is a plain sentence", (_, on, sentence) => expect(() => sideload(on, "/built/manifest.xml", false)).toThrow(sentence));

test("what is not built is not sideloaded", () => {
  expect(() => sideload(computer("darwin"), "/elsewhere/manifest.xml", false)).toThrow("The add-in is not built yet.");
});
