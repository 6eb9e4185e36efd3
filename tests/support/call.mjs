// Reads {module, function, calls} from stdin, calls the function once a list of arguments and
// writes the results as JSON. The first call that throws ends the run and names itself.
import { readFileSync } from "node:fs";

const { module, function: name, calls } = JSON.parse(readFileSync(0, "utf8"));

function plain(key, value) {
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new Error(`${value} is no JSON number`);
  }
  return value === undefined ? null : value;
}

function fail(sentence) {
  process.stdout.write(JSON.stringify({ problem: sentence }));
}

async function run() {
  const exported = (await import(module))[name];
  if (typeof exported !== "function") {
    fail(`the module exports no function ${name}`);
    return;
  }
  const results = [];
  for (const args of calls) {
    try {
      results.push(JSON.parse(JSON.stringify((await exported(...args)) ?? null, plain)));
    } catch (error) {
      fail(`${name}(${args.map((arg) => JSON.stringify(arg)).join(", ")}) threw ${error}`);
      return;
    }
  }
  process.stdout.write(JSON.stringify({ results }));
}

await run();
