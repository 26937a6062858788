-- A journal as the first revision wrote it: never to be made anew.
BEGIN TRANSACTION;
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0001');
CREATE TABLE collection (
	name TEXT NOT NULL, 
	number BIGINT NOT NULL, 
	digest VARCHAR(64) NOT NULL, 
	CONSTRAINT pk_collection PRIMARY KEY (name)
);
INSERT INTO "collection" VALUES('journal',3,'d5de959e6ee666a676a2b5766c383c870f257731c4ddacb1d52309e91f552a69');
CREATE TABLE entry (
	collection TEXT NOT NULL, 
	number BIGINT NOT NULL, 
	id VARCHAR(36) NOT NULL, 
	text TEXT NOT NULL, 
	digest VARCHAR(64) NOT NULL, 
	CONSTRAINT pk_entry PRIMARY KEY (collection, number), 
	CONSTRAINT fk_entry_collection_collection FOREIGN KEY(collection) REFERENCES collection (name), 
	CONSTRAINT uq_entry_collection_id UNIQUE (collection, id), 
	CONSTRAINT ck_entry_number CHECK (number > 0)
)
 WITHOUT ROWID

;
INSERT INTO "entry" VALUES('journal',1,'00000000-0000-4000-8000-000000000001','{"kind": "received"}','a21388517570845af9e561266ff912e3e2ec106a80851277b4e4b6e32b5c748a');
INSERT INTO "entry" VALUES('journal',2,'00000000-0000-4000-8000-000000000002','{"note": "naïve 兵"}','08401c7c628a3fc071a29412dea009f1df9ff970d3a68b93b0fffc6e6988e3cb');
INSERT INTO "entry" VALUES('journal',3,'00000000-0000-4000-8000-000000000003','','d5de959e6ee666a676a2b5766c383c870f257731c4ddacb1d52309e91f552a69');
COMMIT;
