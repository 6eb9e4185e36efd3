// What a module of the kit may say. The first half is care; the second is the small grammar that
// lets Python join the modules without a build step (see DEVELOPERS.md).
import js from "@eslint/js";
import jsdoc from "eslint-plugin-jsdoc";
import stylistic from "@stylistic/eslint-plugin";
import globals from "globals";
import kit from "./rules.js";

const care = {
  "array-callback-return": "error",
  "arrow-body-style": "error",
  "block-scoped-var": "error",
  "complexity": ["error", 16],
  "consistent-return": "error",
  "curly": ["error", "multi-line"],
  "default-case-last": "error",
  "dot-notation": "error",
  "eqeqeq": "error",
  "max-depth": ["error", 4],
  "no-alert": "error",
  "no-bitwise": "error",
  "no-console": "error",
  "no-else-return": "error",
  "no-eval": "error",
  "no-extend-native": "error",
  "no-implicit-coercion": "error",
  "no-implied-eval": "error",
  "no-lonely-if": "error",
  "no-multi-assign": "error",
  "no-new-func": "error",
  "no-param-reassign": "error",
  "no-promise-executor-return": "error",
  "no-return-assign": "error",
  "no-self-compare": "error",
  "no-sequences": "error",
  "no-shadow": "error",
  "no-template-curly-in-string": "error",
  "no-throw-literal": "error",
  "no-unmodified-loop-condition": "error",
  "no-unneeded-ternary": "error",
  "no-unreachable-loop": "error",
  "no-unused-expressions": "error",
  "no-unused-vars": "error",
  "no-use-before-define": ["error", { functions: false, classes: false }],
  "no-useless-computed-key": "error",
  "no-useless-rename": "error",
  "no-useless-return": "error",
  "no-var": "error",
  "object-shorthand": "error",
  "operator-assignment": "error",
  "prefer-arrow-callback": "error",
  "prefer-const": "error",
  "prefer-object-spread": "error",
  "prefer-rest-params": "error",
  "prefer-spread": "error",
  "prefer-template": "error",
  "radix": "error",
  "require-atomic-updates": "error",
  "@stylistic/eol-last": "error",
  "@stylistic/indent": ["error", 2, { SwitchCase: 1 }],
  "@stylistic/max-len": ["error", { code: 100, ignoreUrls: true }],
  "@stylistic/no-tabs": "error",
  "@stylistic/no-trailing-spaces": "error",
  "@stylistic/quotes": [
    "error",
    "double",
    { avoidEscape: true, allowTemplateLiterals: "avoidEscape" },
  ],
  "@stylistic/semi": "error",
};

const text = [
  {
    selector: "AssignmentExpression[left.property.name=/^(inner|outer)HTML$/]",
    message: "Text of others is text, never HTML: use textContent or build elements.",
  },
  {
    selector: "CallExpression[callee.property.name='insertAdjacentHTML']",
    message: "Text of others is text, never HTML: use textContent or build elements.",
  },
];

const noState = "A module keeps no state: hosts differ in how often they load it.";
const noAwait = "No await outside a function.";
const grammar = [
  {
    selector: "ExportNamedDeclaration[declaration=null], ExportAllDeclaration",
    message: "Write export at the declaration of the function, const or class.",
  },
  {
    selector: "ExportNamedDeclaration > VariableDeclaration[kind!='const']",
    message: "Only constants are exported; state lives in the widget.",
  },
  {
    selector: "ExportNamedDeclaration > * > VariableDeclarator[id.type!='Identifier']",
    message: "Export one plain name.",
  },
  {
    selector: "ImportDeclaration[source.value=/[.]js$/] > ImportDefaultSpecifier, " +
      "ImportNamespaceSpecifier",
    message: "Import by name: import { a, b } from \"./x.js\";",
  },
  {
    selector: "ImportDeclaration[source.value=/[.]json$/] > ImportSpecifier",
    message: "Import a table whole: import a from \"./x.json\" with { type: \"json\" };",
  },
  {
    selector: "ImportDeclaration[specifiers.length=0]",
    message: "A module does nothing by being imported; import a name.",
  },
  {
    selector: "ImportDeclaration[source.value!=/^[.][.]?[/].*[.](js|json)$/]",
    message: "Import from a relative path that ends in .js or .json.",
  },
  { selector: "ImportExpression", message: "A blob: URL has no folder to import from." },
  { selector: "Program > ExpressionStatement AwaitExpression.expression", message: noAwait },
  { selector: "Program > * > VariableDeclarator > AwaitExpression.init", message: noAwait },
  { selector: "Program > VariableDeclaration[kind!='const']", message: noState },
  {
    selector: "Program > * > * > NewExpression[callee.name=/(Map|Set|Array)$/][arguments.length=0]",
    message: noState,
  },
];

const outside = ["fetch", "XMLHttpRequest", "WebSocket", "EventSource"].map((name) => ({
  name,
  message: "Nothing leaves the machine.",
}));

export default [
  { ignores: ["**/node_modules/**", "**/.venv/**", "**/build/**", "**/dist/**"] },
  { linterOptions: { reportUnusedDisableDirectives: "error" } },
  js.configs.recommended,
  {
    files: ["**/*.js", "**/*.mjs"],
    plugins: { "@stylistic": stylistic },
    languageOptions: { ecmaVersion: 2025, sourceType: "module" },
    rules: { ...care, "no-restricted-syntax": ["error", ...text] },
  },
  {
    files: ["manipulatives/**/*.js"],
    plugins: { jsdoc, kit },
    languageOptions: { globals: globals.browser },
    rules: {
      "no-restricted-globals": ["error", ...outside],
      "no-inline-comments": ["error", { ignorePattern: "@type" }],
      "no-restricted-syntax": ["error", ...text, ...grammar],
      "kit/listeners": "error",
      "kit/own-name": "error",
      "kit/same-name": "error",
      "jsdoc/require-jsdoc": ["error", { publicOnly: true, require: { ClassDeclaration: true } }],
      "jsdoc/require-param": "error",
      "jsdoc/require-param-type": "error",
      "jsdoc/require-returns-type": "error",
      "jsdoc/check-param-names": "error",
      "jsdoc/check-tag-names": ["error", { typed: false }],
    },
  },
  {
    files: ["tests/**/*.js", "tests/**/*.mjs"],
    languageOptions: { globals: globals.node },
  },
  {
    files: ["tests/benchmarks/**/*.js"],
    languageOptions: { globals: globals.browser },
  },
];
