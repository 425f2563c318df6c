export * from '@loomwright/worked';
