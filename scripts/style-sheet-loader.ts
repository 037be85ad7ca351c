// For webpack.config.js: a style sheet with its parts in place. The build runs under tsx, so that this may be TypeScript.
import { type LoaderContext } from "webpack";
import { readStyleSheet } from "./style-sheet";

export default function styleSheetLoader(this: LoaderContext<unknown>): string {
  const { text, files } = readStyleSheet(this.resourcePath);
  for (const file of files) this.addDependency(file);
  return text;
}
