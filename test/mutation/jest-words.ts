/**
 * The words of jest that the tests of the core use, for mocha. It loads the tests once and runs them again and again,
 * where jest would load them anew for each of thousands of mutants. See scripts/mutation.ts.
 */
import Module from "node:module";
import { expect } from "expect";
import { bind } from "jest-each";
import { nextTest } from "./kept-for-one-test";

type Word = (name: string, body: () => unknown) => unknown;
const each = (word: Word): Word => Object.assign(word, { each: bind(word as Parameters<typeof bind>[0]) });
const words = globalThis as unknown as { it: Word; describe: Word };

/** Mocha sets its own words anew before it loads each file; ours pass on to the last it set. */
let { describe: mochaDescribe } = words;
const describe = each((name, body) => mochaDescribe(name, body));
Object.defineProperty(globalThis, "describe", { get: () => describe, set: (set: Word) => { mochaDescribe = set; } });

/** Seconds each: too long where tests run thousands of times. */
const LONG = /200 random catalogues|BALANCE of many rows/;
const test = each((name, body) => LONG.test(name) || words.it(name, () => {
  nextTest();
  return body();
}));
Object.assign(globalThis, { expect, test });

const loader = Module as unknown as { _resolveFilename: (request: string, parent?: { readonly filename?: string }, ...rest: readonly unknown[]) => string };
const resolveAsEver = loader._resolveFilename;
const standIn = require.resolve("./kept-for-one-test");
loader._resolveFilename = (request, parent, ...rest) =>
  /(^|\/)made-once$/.test(request) && parent?.filename !== standIn ? standIn : resolveAsEver.call(loader, request, parent, ...rest);
