-- A journal as the first revision wrote it: never to be made anew.
CREATE TABLE public.alembic_version (
    version_num character varying(32) NOT NULL
);
CREATE TABLE public.collection (
    name text NOT NULL,
    number bigint NOT NULL,
    digest character varying(64) NOT NULL
);
CREATE TABLE public.entry (
    collection text NOT NULL,
    number bigint NOT NULL,
    id character varying(36) NOT NULL COLLATE pg_catalog."C",
    text text NOT NULL,
    digest character varying(64) NOT NULL,
    CONSTRAINT ck_entry_number CHECK ((number > 0))
);
INSERT INTO public.alembic_version VALUES ('0001');
INSERT INTO public.collection VALUES ('club', 3, 'd5de959e6ee666a676a2b5766c383c870f257731c4ddacb1d52309e91f552a69');
INSERT INTO public.entry VALUES ('club', 1, '00000000-0000-4000-8000-000000000001', '{"kind": "received"}', 'a21388517570845af9e561266ff912e3e2ec106a80851277b4e4b6e32b5c748a');
INSERT INTO public.entry VALUES ('club', 2, '00000000-0000-4000-8000-000000000002', '{"note": "naïve 兵"}', '08401c7c628a3fc071a29412dea009f1df9ff970d3a68b93b0fffc6e6988e3cb');
INSERT INTO public.entry VALUES ('club', 3, '00000000-0000-4000-8000-000000000003', '', 'd5de959e6ee666a676a2b5766c383c870f257731c4ddacb1d52309e91f552a69');
ALTER TABLE ONLY public.alembic_version
    ADD CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num);
ALTER TABLE ONLY public.collection
    ADD CONSTRAINT pk_collection PRIMARY KEY (name);
ALTER TABLE ONLY public.entry
    ADD CONSTRAINT pk_entry PRIMARY KEY (collection, number);
ALTER TABLE ONLY public.entry
    ADD CONSTRAINT uq_entry_collection_id UNIQUE (collection, id);
ALTER TABLE ONLY public.entry
    ADD CONSTRAINT fk_entry_collection_collection FOREIGN KEY (collection) REFERENCES public.collection(name);
