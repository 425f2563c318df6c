export * from 'loomwright';
