import {
  OperationNodeTransformer,
  RawNode,
  GeneratedNode,
  type ColumnDefinitionNode,
  type CreateTableNode,
  type KyselyPlugin,
  type OperationNode,
  type PluginTransformQueryArgs,
  type PluginTransformResultArgs,
  type QueryId,
  type QueryResult,
  type RootOperationNode,
  type UnknownRow,
} from 'kysely';

const typeOf = (column: OperationNode): string | undefined =>
  'dataType' in column && typeof column.dataType === 'string' ? column.dataType : undefined;

/** Text is compared byte by byte, as in SQLite: pages of keys depend on it. */
const bytewise = RawNode.createWithSql('text collate "C"');
/** SQLite's integers have 64 bits. */
const integer = RawNode.createWithSql('bigint');
const counter = GeneratedNode.create({ identity: true, byDefault: true });

const isWithoutRowid = (node: OperationNode): boolean =>
  RawNode.is(node) && node.sqlFragments.join('') === 'without rowid';

class ForPostgres extends OperationNodeTransformer {
  protected override transformCreateTable(node: CreateTableNode, id?: QueryId): CreateTableNode {
    const table = super.transformCreateTable(node, id);
    const { endModifiers = [], ...rest } = table;
    return { ...rest, endModifiers: endModifiers.filter((one) => !isWithoutRowid(one)) };
  }

  protected override transformColumnDefinition(
    node: ColumnDefinitionNode,
    id?: QueryId,
  ): ColumnDefinitionNode {
    const column = super.transformColumnDefinition(node, id);
    const type = typeOf(column.dataType);
    if (type === 'text') return { ...column, dataType: bytewise };
    if (type !== 'integer') return column;
    return { ...column, dataType: integer, ...(column.primaryKey && { generated: counter }) };
  }
}

/** Lets the migrations, which are written for SQLite, make the same tables on PostgreSQL. */
export class SchemaForPostgres implements KyselyPlugin {
  readonly #transformer = new ForPostgres();

  transformQuery({ node, queryId }: PluginTransformQueryArgs): RootOperationNode {
    return this.#transformer.transformNode(node, queryId);
  }

  transformResult({ result }: PluginTransformResultArgs): Promise<QueryResult<UnknownRow>> {
    return Promise.resolve(result);
  }
}
