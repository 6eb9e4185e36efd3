// Two habits of the kit that no ready rule checks.

function name(node) {
  return node.type === "Identifier" ? node.name : node.value;
}

/** A listener is on an element, for pointer events, and ends with its widget. */
const listeners = {
  create(context) {
    return {
      "CallExpression[callee.property.name='addEventListener']"(node) {
        const [event, , options] = node.arguments;
        if (["window", "globalThis"].includes(node.callee.object.name)) {
          context.report({ node, message: "Listen on the element; the window is the host's." });
        }
        if (event?.type === "Literal" && /^(mouse|touch)/.test(event.value)) {
          context.report({ node, message: "Pointer events serve mouse, pen and finger alike." });
        }
        const properties = options?.type === "ObjectExpression" ? options.properties : [];
        // A name holds what the type checker sees to; and what follows the end of the signal
        // itself cannot end before it.
        const ends = options?.type === "Identifier" ||
          properties.some((property) => property.key && name(property.key) === "signal");
        if (!ends && event?.value !== "abort") {
          context.report({ node, message: "A listener ends with its widget: pass { signal }." });
        }
      },
    };
  },
};

/** An imported name keeps its name, for the assembler puts it there as it is. */
const sameName = {
  create(context) {
    return {
      ImportSpecifier(node) {
        if (name(node.imported) !== node.local.name) {
          context.report({ node, message: "Import a name as it is, without `as`." });
        }
      },
    };
  },
};

/**
 * An export does not have the name of something of the browser, for the assembler declares it
 * before modules that may mean the browser's.
 */
const ownName = {
  create(context) {
    return {
      "ExportNamedDeclaration > :matches(*, VariableDeclaration > *) > Identifier.id"(node) {
        if (Object.hasOwn(context.languageOptions.globals, node.name)) {
          context.report({ node, message: `Browsers have a ${node.name} of their own.` });
        }
      },
    };
  },
};

export default { rules: { listeners, "own-name": ownName, "same-name": sameName } };
