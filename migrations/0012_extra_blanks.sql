ALTER TABLE `part` ADD `extraBlanks` text;--> statement-breakpoint
ALTER TABLE `settings` ADD `extraBlanks` text DEFAULT '{"setUp":0,"scrapShare":0}' NOT NULL;--> statement-breakpoint
-- Both histories keep whole rows: they get the new field too, or an older step could not be undone nor a report taken back.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`,
			'$.before.extraBlanks', json('{"setUp":0,"scrapShare":0}'), '$.after.extraBlanks', json('{"setUp":0,"scrapShare":0}'))
		WHEN 'part' THEN json_set(`change`.`value`, '$.before.extraBlanks', NULL, '$.after.extraBlanks', NULL)
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"part"%' OR `changes` LIKE '%"kind":"settings"%';--> statement-breakpoint
UPDATE `fact` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`,
			'$.before.extraBlanks', json('{"setUp":0,"scrapShare":0}'), '$.after.extraBlanks', json('{"setUp":0,"scrapShare":0}'))
		WHEN 'part' THEN json_set(`change`.`value`, '$.before.extraBlanks', NULL, '$.after.extraBlanks', NULL)
		ELSE `change`.`value` END))
	FROM json_each(`fact`.`changes`) AS `change`
) WHERE `changes` LIKE '%"kind":"part"%' OR `changes` LIKE '%"kind":"settings"%';
