// Run by scripts/build.ts under tsx, which lets this file read the TypeScript modules beside it.
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import webpack from "webpack";
import { BundledLicences } from "./scripts/bundled-licences";
import { developmentOrigin, functionFiles, metadataText, readFunctionMetadata } from "./scripts/function-metadata";
import { functionsPage } from "./scripts/functions-page";
import { hostHeaders } from "./scripts/host-headers";

const here = fileURLToPath(new URL(".", import.meta.url));
const at = (path) => `${here}${path}`;

/**
 * The two things we ship.
 * @param origin scheme and host that the add-in is served from
 * @param only the name of the one to build, or undefined for both
 */
export default function configure({ origin, only }) {
  const parts = { addin: () => addin(origin), embedded: embeddedPage };
  return Object.keys(parts)
    .filter((name) => only === undefined || name === only)
    .map((name) => parts[name]());
}

/** One entry, so that worksheet functions and panel share the one catalogue cache. */
function addin(origin) {
  const files = functionFiles();
  return {
    ...shared("addin", [{ test: /functions\.json$/, type: "json", parser: { parse: (text) => JSON.parse(text.replaceAll(developmentOrigin, origin)) } }]),
    entry: { taskpane: at("src/taskpane/main.ts") },
    optimization: {
      moduleIds: "size",
      mangleExports: "size",
      // What the functions about cars share with any other part is one file, as the panel and nearly every cell need it.
      splitChunks: { cacheGroups: { trade: { name: "trade", chunks: "async", minChunks: 2, enforce: true, priority: 1, test: (module, { chunkGraph }) => isInCars(module, chunkGraph) } } },
    },
    plugins: [
      new FunctionPages(files, origin),
      new HostHeaders(),
      new BundledLicences(),
      new CopyPlugin({
        patterns: [
          { from: at("src/taskpane/taskpane.html") },
          { from: at("assets/support.html") },
          { from: at("assets/privacy.html") },
          { from: at("assets/pages.css") },
          { from: at("assets/icon-*.png"), to: "assets/[name][ext]" },
          { from: at("manifest.xml"), transform: (text) => text.toString().replaceAll(developmentOrigin, origin) },
        ],
      }),
    ],
  };
}

const isInCars = (module, chunkGraph) => [...chunkGraph.getModuleChunksIterable(module)].some(({ name }) => name === "cars");

/** The grid library is copied as it is and loaded by its own script tag: it keeps its licence, and we keep ours. */
function embeddedPage() {
  return {
    ...shared("embedded"),
    entry: { page: at("src/embedded/page.ts") },
    optimization: { minimize: false }, // it travels over loopback only, and `npm start` should not wait for it
    externals: { "@odoo/o-spreadsheet": "var o_spreadsheet", "@odoo/owl": "var owl" },
    plugins: [
      new BundledLicences(),
      new CopyPlugin({
        patterns: [
          { from: at("src/embedded/page.html"), to: "index.html" },
          { from: at("assets/icon-32.png") },
          { from: at("node_modules/@odoo/o-spreadsheet/dist/o_spreadsheet.iife.js"), to: "grid/" },
          { from: at("node_modules/@odoo/o-spreadsheet/dist/o_spreadsheet.{css,xml}"), to: "grid/[name][ext]" },
          { from: at("node_modules/@odoo/o-spreadsheet/LICENSE"), to: "grid/LICENSE.o-spreadsheet.txt", toType: "file" },
          { from: at("node_modules/@odoo/owl/LICENSE"), to: "grid/LICENSE.owl.txt", toType: "file" },
          { from: at("node_modules/@odoo/owl/dist/owl.iife.js"), to: "grid/" },
        ],
      }),
    ],
  };
}

function shared(name, rules = []) {
  return {
    name,
    mode: "production",
    target: ["web", "es2022"],
    devtool: "source-map", // an eval devtool would need unsafe-eval in the page's content security policy
    output: { path: at(`dist/${name}`), filename: "[name].js", chunkFilename: "[name].js", assetModuleFilename: "[name][ext]", clean: true },
    resolve: { extensions: [".ts", ".js"] },
    module: {
      rules: [
        { test: /\.ts$/, exclude: /node_modules/, use: { loader: "swc-loader", options: swcOptions } },
        { test: /\.css$/, type: "asset/resource", use: at("scripts/style-sheet-loader.ts") },
        ...rules,
      ],
    },
    performance: false, // scripts/build.ts weighs the first load itself, compressed
  };
}

const swcOptions = { jsc: { parser: { syntax: "typescript" }, target: "es2022" } };

/** Writes functions.json, by which a spreadsheet knows our functions, and the help page that it leads to. */
class FunctionPages {
  constructor(files, origin) {
    this.files = files;
    this.origin = origin;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap("FunctionPages", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
      compilation.hooks.processAssets.tapPromise({ name: "FunctionPages", stage }, async () => {
        const metadata = await readFunctionMetadata(this.files, this.origin);
        const write = (name, text) => compilation.emitAsset(name, new webpack.sources.RawSource(text));
        write("functions.json", metadataText(metadata));
        write("functions.html", functionsPage(metadata));
      });
    });
  }
}

/** Writes the headers that the pages want of their host, when all pages are there. */
class HostHeaders {
  apply(compiler) {
    compiler.hooks.thisCompilation.tap("HostHeaders", (compilation) => {
      compilation.hooks.processAssets.tap({ name: "HostHeaders", stage: webpack.Compilation.PROCESS_ASSETS_STAGE_SUMMARIZE }, (assets) => {
        const pages = Object.keys(assets).filter((name) => name.endsWith(".html")).sort().map((name) => ({ name, text: assets[name].source().toString() }));
        compilation.emitAsset("_headers", new webpack.sources.RawSource(hostHeaders(pages)));
      });
    });
  }
}
