import type { FunctionDescription, FunctionMetadata, FunctionParameter } from "./function-metadata";

/** The help page that a spreadsheet opens for a function: every function with its arguments, each at #NAME. */
export function functionsPage({ functions }: FunctionMetadata): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; img-src 'self'">
<title>Plumbline worksheet functions</title>
<link rel="icon" href="assets/icon-32.png">
<link rel="stylesheet" href="pages.css">
</head>
<body>
<main>
<h1>Worksheet functions</h1>
<nav aria-label="Functions">
<ul class="index">
${functions.map(({ id }) => `<li><a href="#${id}">${id}</a></li>`).join("\n")}
</ul>
</nav>
${functions.map(section).join("\n")}
</main>
</body>
</html>
`;
}

function section({ id, description = "", parameters }: FunctionDescription): string {
  return `<section id="${id}">
<h2>${id}</h2>
<p>${escape(description)}</p>
<p><code>=PLUMB.${id}(${parameters.map(signature).join(", ")})</code></p>
<dl>
${parameters.map((parameter) => `<dt>${escape(parameter.name)}</dt><dd>${escape(parameter.description ?? "")}</dd>`).join("\n")}
</dl>
</section>`;
}

function signature({ name, optional, repeating }: FunctionParameter): string {
  if (repeating) return `${escape(name)}, …`;
  return optional ? `[${escape(name)}]` : escape(name);
}

const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

const escape = (text: string): string => text.replace(/[&<>"]/g, (character) => entities[character] ?? character);
