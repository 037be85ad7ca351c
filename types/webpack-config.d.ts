// The webpack configuration stays JavaScript, as its tools expect; this is what scripts/build.ts needs of it.
declare module "*/webpack.config.js" {
  import type { Configuration } from "webpack";
  export default function configure(options: { origin: string; only?: string }): Configuration[];
}
