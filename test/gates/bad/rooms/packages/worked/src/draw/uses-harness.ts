export * from '@loomwright/harness';
