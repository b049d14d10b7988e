ALTER TABLE `record` ADD `who` text DEFAULT '[]' NOT NULL;--> statement-breakpoint
ALTER TABLE `settings` ADD `askWho` integer DEFAULT false NOT NULL;--> statement-breakpoint
-- The history keeps whole rows: they get the new fields too, or an older step could not be undone.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'record' THEN json_set(`change`.`value`, '$.before.who', json('[]'), '$.after.who', json('[]'))
		WHEN 'settings' THEN json_set(`change`.`value`, '$.before.askWho', json('false'), '$.after.askWho', json('false'))
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
);
