// ESLint rules of the house, for the core.
import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { isUnitName } from './names.mjs';

/** number, number | null, readonly number[], Float64Array …: a type whose values are numbers. */
function isNumeric(type) {
  switch (type?.type) {
    case 'TSNumberKeyword':
      return true;
    case 'TSUnionType':
      return (
        type.types.some(isNumeric) &&
        type.types.every((t) => isNumeric(t) || t.type === 'TSNullKeyword' || t.type === 'TSUndefinedKeyword')
      );
    case 'TSArrayType':
      return isNumeric(type.elementType);
    case 'TSTypeOperator':
      return isNumeric(type.typeAnnotation);
    case 'TSTypeReference':
      return (
        /^(?:Float32Array|Float64Array)$/.test(type.typeName.name ?? '') ||
        (/^(?:ReadonlyArray|Array)$/.test(type.typeName.name ?? '') &&
          isNumeric(type.typeArguments?.params[0] ?? undefined))
      );
    default:
      return false;
  }
}

/** Names that the area's index gives to the world; null where it gives everything of this file. */
function publicNames(filename) {
  const index = join(dirname(filename), 'index.ts');
  if (!existsSync(index)) return new Set();
  const text = readFileSync(index, 'utf8');
  const file = basename(filename, '.ts');
  if (new RegExp(`export \\* from '\\./${file}\\.js'`).test(text)) return null;
  const list = new RegExp(`export (?:type )?\\{([^}]*)\\} from '\\./${file}\\.js'`, 'g');
  const names = [...text.matchAll(list)].flatMap(([, all]) => all.split(','));
  return new Set(names.map((name) => name.trim().replace(/^type /, '')));
}

/** Every numeric field of a public type ends in its unit, or is one of the words without a dimension. */
const unitSuffix = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      noUnit: "'{{name}}' has no unit at its end (worked/quantity/field-unit.ts), nor needs none (test/lint/names.mjs)",
    },
  },
  create(context) {
    const names = publicNames(context.filename);
    let inside = false;
    const enter = ({ id }) => {
      inside = names === null || names.has(id.name);
    };
    const leave = () => {
      inside = false;
    };
    const declaration = 'ExportNamedDeclaration > :matches(TSInterfaceDeclaration, TSTypeAliasDeclaration)';
    return {
      [declaration]: enter,
      [`${declaration}:exit`]: leave,
      TSPropertySignature(node) {
        if (!inside || !isNumeric(node.typeAnnotation?.typeAnnotation)) return;
        const name = node.key.name ?? String(node.key.value);
        if (!isUnitName(name)) context.report({ node: node.key, messageId: 'noUnit', data: { name } });
      },
    };
  },
};

/** Every field of an exported type is read-only: inputs and results are not changed by anyone. */
const readonlyFields = {
  meta: { type: 'problem', schema: [], messages: { writable: "'{{name}}' must be readonly" } },
  create(context) {
    return {
      'ExportNamedDeclaration > TSInterfaceDeclaration > TSInterfaceBody > TSPropertySignature[readonly=false]'(node) {
        context.report({ node, messageId: 'writable', data: { name: node.key.name ?? String(node.key.value) } });
      },
    };
  },
};

const CONVERTER = /^[a-z][A-Za-z0-9]*To[A-Z][A-Za-z0-9]*$/;
const PLAIN = /^TS(?:Number|String|Boolean|Any|Unknown|BigInt)Keyword$/;

/** A public function takes one object, unless it converts one plain value into another and is called so. */
const oneObject = {
  meta: {
    type: 'problem',
    schema: [{ type: 'object', properties: { except: { type: 'array', items: { type: 'string' } } } }],
    messages: {
      oneObject: "'{{name}}' is public: it takes one object called input (only a converter xToY takes a plain value)",
      converter: "'{{name}}' is a converter: it takes one plain value",
    },
  },
  create(context) {
    const { except = [] } = context.options[0] ?? {};
    const names = publicNames(context.filename);
    return {
      'ExportNamedDeclaration > FunctionDeclaration'(node) {
        const name = node.id.name;
        if ((names !== null && !names.has(name)) || except.includes(name)) return;
        const [first, ...rest] = node.params;
        const type = first?.typeAnnotation?.typeAnnotation?.type ?? '';
        if (CONVERTER.test(name) && PLAIN.test(type)) {
          if (rest.length > 0) context.report({ node, messageId: 'converter', data: { name } });
        } else if (rest.length > 0 || first?.name !== 'input' || PLAIN.test(type) || type === 'TSArrayType') {
          context.report({ node, messageId: 'oneObject', data: { name } });
        }
      },
    };
  },
};

export const house = {
  meta: { name: 'house' },
  rules: { 'unit-suffix': unitSuffix, 'readonly-fields': readonlyFields, 'one-object': oneObject },
};
