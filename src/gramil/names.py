"""Every figure of the graph by name, typed: made by `make names`, never edited by hand.

`from gramil import names as n`, then `n.slot_depth_setting`, `n.fret_position[12]`, `n.saw_main.kerf`. At run time a
name is a plain reference; the graph refuses one that leads nowhere when what pages show is read.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from gramil.reference import Ref

WIRING: dict[str, dict[str, tuple[str, ...]]] = {
    "gramil.parts.access": {
        "access_depth": ("body_outlines", "bend_treble",),
        "access_fret": ("edge_x_treble", "body_edge", "access_depth",),
        "access_beside_board": ("body_outlines", "access_depth", "body_edge", "nut_width", "board_growth", "board_tail_position",),
    },
    "gramil.parts.arch": {
        "arch_surface": ("board_curvature_nut", "board_curvature_end", "board_tail_position",),
        "arch_radius_at_fret": ("arch_surface", "fret_position",),
        "arch_fall_at_edge_treble": ("arch_surface", "edge_x_treble", "edge_y_treble",),
        "arch_fall_at_edge_bass": ("arch_surface", "edge_x_bass", "edge_y_bass",),
        "arch_fall_at_core_treble": ("arch_surface", "core_x_treble", "core_y_treble",),
        "arch_fall_at_core_bass": ("arch_surface", "core_x_bass", "core_y_bass",),
        "arch_fall_at_nut_end": ("arch_surface", "board_outline",),
        "arch_fall_at_tail_end": ("arch_surface", "board_outline",),
        "arch_fall_under_string": ("arch_surface", "string_x", "string_y",),
        "arch_over_chord": ("arch_fall_under_string", "string_x",),
        "arch_hump": ("arch_over_chord",),
    },
    "gramil.parts.back_bow": {
        "back_bow_length": ("scale_join", "fret_position",),
        "back_bow_frets": ("scale_join", "slot_first",),
        "back_bow_span": ("scale_join", "fret_position",),
        "back_bow_layers": ("board_width_at_fret", "thickness_at_crest", "wire_tang_depth", "section_neck", "board_modulus", "neck_modulus",),
        "back_bow_curvature": ("back_bow_layers", "scale_join",),
        "back_bow_least": ("wire_fits", "saw_main", "back_bow_row", "back_bow_span", "limit_wedge_kept_least",),
        "back_bow_most": ("wire_fits", "saw_main", "back_bow_row", "back_bow_span", "limit_wedge_kept_most",),
        "back_bow_row": ("back_bow_frets", "back_bow_length", "back_bow_curvature",),
    },
    "gramil.parts.bends": {
        "bend_treble": ("body_outlines",),
        "bend_bass": ("body_outlines",),
        "bend_tightest_treble": ("bend_treble",),
        "bend_tightest_bass": ("bend_bass",),
        "bend_thin_to": ("bend_tightest_treble", "bend_tightest_bass", "limit_bend_ratio_least",),
    },
    "gramil.parts.bevel": {
        "bevel_arm": ("arm_bevel_width", "arm_bevel_drop", "arm_bevel_length", "arm_bevel_place", "arm_bevel_block", "arm_bevel_block_width", "arm_bevel_block_height", "arm_bevel_layer", "arm_bevel_veneer", "arm_bevel_binding",),
        "bevel_rib": ("rib_bevel_width", "rib_bevel_drop", "rib_bevel_length", "rib_bevel_place", "rib_bevel_block", "rib_bevel_block_width", "rib_bevel_block_height", "rib_bevel_layer", "rib_bevel_veneer", "rib_bevel_binding",),
        "bevel_laid": ("bevel_arm", "bevel_rib", "body_sides", "graduated_edge", "body_back_thickness",),
        "bevel_list": ("bevel_laid", "channel_edge_top", "channel_edge_back",),
        "bevel_marks": ("bevel_laid",),
        "bevel_patterns": ("bevel_laid",),
        "bevel_veneers": ("bevel_patterns", "bevel_list", "bevel_laid", "limit_veneer_over",),
        "bevel_veneer_length_arm": ("bevel_veneers",),
        "bevel_veneer_width_arm": ("bevel_veneers",),
        "bevel_veneer_length_rib": ("bevel_veneers",),
        "bevel_veneer_width_rib": ("bevel_veneers",),
    },
    "gramil.parts.binding": {
        "ledge_options": ("shop_cutters", "core_inset", "shop_units",),
        "ledge_choice": ("ledge_options", "limit_binding_proud_most",),
    },
    "gramil.parts.binding_strips": {
        "strip_length": ("side_longer", "limit_strip_over", "channel_edges",),
        "strip_list": ("channel_edges", "body_sides", "body_tightest_bend", "limit_strip_over",),
    },
    "gramil.parts.blank": {
        "blank_length": ("board_outline", "shop_allowance_length", "template_pin_reach",),
        "blank_width": ("board_outline", "shop_allowance_side",),
        "blank_thickness": ("thickness_before_levelling", "slots_crest_loss", "lean_over_middle",),
        "blank_options": ("shop_blanks", "shop_kept", "board_wood", "blank_length", "blank_width", "blank_thickness",),
        "blank_choice": ("blank_options",),
    },
    "gramil.parts.block": {
        "block_at_nut": ("shop_blocks", "arch_surface", "nut_width",),
        "block_at_end": ("shop_blocks", "arch_surface", "board_tail_position", "board_width_at_tail",),
        "block_at_middle": ("shop_blocks", "arch_surface", "board_width_position", "board_width",),
    },
    "gramil.parts.board": {
        "board_width_position": ("board_width_station", "fret_position",),
        "board_growth": ("nut_width", "board_width", "board_width_position",),
        "board_half_taper_angle": ("board_growth",),
        "board_taper_angle": ("board_half_taper_angle",),
        "board_nut_position": ("nut_set_forward", "nut_behind", "scale_zero_fret",),
        "board_tail_position": ("fret_position", "board_beyond_last_fret",),
        "board_length": ("board_tail_position", "board_nut_position",),
        "board_width_at_fret": ("nut_width", "board_growth", "fret_position",),
        "board_width_at_tail": ("nut_width", "board_growth", "board_tail_position",),
        "edge_y_treble": ("board_width_at_fret", "board_growth", "fret_slant",),
        "edge_y_bass": ("board_width_at_fret", "board_growth", "fret_slant",),
        "board_nut_reach_treble": ("edge_y_treble", "fret_slant",),
        "board_nut_reach_bass": ("edge_y_bass", "fret_slant",),
        "board_nut_length": ("board_nut_reach_treble", "board_nut_reach_bass",),
        "edge_x_treble": ("fret_position", "fret_slant", "edge_y_treble",),
        "edge_x_bass": ("fret_position", "fret_slant", "edge_y_bass",),
        "core_inset": ("binding_thickness", "binding_purfling",),
        "core_inset_across": ("core_inset", "board_half_taper_angle",),
        "core_width_at_fret": ("board_width_at_fret", "core_inset_across",),
        "core_y_treble": ("core_width_at_fret", "board_growth", "fret_slant",),
        "core_y_bass": ("core_width_at_fret", "board_growth", "fret_slant",),
        "core_x_treble": ("fret_position", "fret_slant", "core_y_treble",),
        "core_x_bass": ("fret_position", "fret_slant", "core_y_bass",),
        "core_tail_position": ("board_tail_position", "core_inset", "binding_tail", "fret_slant",),
        "board_outline": ("nut_width", "board_growth", "board_nut_position", "board_tail_position", "fret_slant",),
        "core_outline": ("nut_width", "core_inset_across", "board_growth", "board_nut_position", "core_tail_position", "fret_slant",),
    },
    "gramil.parts.body": {
        "body_edge": ("back_bow_length", "body_beyond_join",),
        "body_saddle": ("saddle_position", "body_edge",),
        "body_zeros": ("body_beyond_join", "body_length", "body_saddle",),
        "body_length": ("body_outlines",),
        "body_width": ("body_outlines",),
        "body_reach_treble": ("body_outlines",),
        "body_reach_bass": ("body_outlines",),
        "body_reach": ("body_reach_treble", "body_reach_bass",),
        "body_perimeter": ("body_outlines",),
        "body_bouts": ("body_outlines",),
        "body_tightest_bend": ("body_bouts", "bend_tightest_treble", "bend_tightest_bass",),
        "body_bend_ratio": ("body_tightest_bend", "body_wall",),
        "body_width_share": ("body_outlines", "body_saddle",),
        "body_sides": ("body_outlines", "body_depth_neck", "body_depth_tail", "top_radius", "body_back_radius",),
        "body_shells": ("body_sides", "body_wall", "body_linings",),
        "body_rise_top": ("body_length", "top_radius",),
        "body_rise_back": ("body_length", "body_back_radius",),
        "body_deepest": ("body_depth_neck", "body_depth_tail", "body_rise_top", "body_rise_back",),
        "body_air_volume": ("body_sides", "body_wall", "body_blocks", "body_linings_volume", "bevelled_more",),
        "body_blocks": ("body_shells", "body_neck_block", "body_neck_block_width", "body_tail_block", "body_tail_block_width", "foot_there",),
        "body_linings_volume": ("body_perimeter", "body_linings", "body_linings_height",),
        "body_air_openings": ("opening_list", "port_list",),
        "body_air_rigid": ("body_air_openings", "body_air_volume",),
        "body_air_least": ("body_air_rigid", "limit_air_share_least",),
        "body_air_most": ("body_air_rigid", "limit_air_share_most",),
        "body_plate_length": ("body_length", "body_plate_allowance",),
        "body_plate_half_width": ("body_reach", "body_plate_allowance",),
        "body_plate_width": ("body_plate_half_width",),
        "body_mould_length": ("body_length", "body_mould_wall",),
        "body_mould_half_width": ("body_reach", "body_mould_wall",),
        "body_mould_thickness": ("side_shallowest",),
    },
    "gramil.parts.brace_room": {
        "room_bridge_to_legs": ("brace_list", "brace_legs", "brace_bridge",),
        "room_plate_to_legs": ("brace_list", "brace_legs", "plate_shapes",),
        "room_plate_to_braces": ("brace_list", "brace_legs", "plate_shapes", "braces_asked",),
        "room_pins_in_plate": ("brace_pins", "plate_shapes", "bridge_pin_diameter",),
        "room_crossing_to_hole": ("brace_list", "brace_legs", "opening_main",),
        "room_braces_to_hole": ("brace_list", "opening_main",),
        "room_pins_to_braces": ("brace_list", "brace_pins", "bridge_pin_diameter",),
        "room_nearest_braces": ("brace_list", "braces_asked", "brace_crossings",),
        "room_between_braces": ("brace_list", "room_nearest_braces",),
        "room_braces_to_blocks": ("brace_list", "body_blocks",),
        "room_outside": ("brace_list", "body_shells",),
    },
    "gramil.parts.brace_stock": {
        "stick_list": ("brace_list",),
        "stick_billets": ("stick_list", "shop_blanks",),
        "stick_wanting": ("stick_list", "shop_blanks",),
    },
    "gramil.parts.braces": {
        "brace_zeros": ("body_zeros", "soundhole_centre",),
        "brace_list": ("braces_asked", "brace_zeros", "body_shells", "body_clearance",),
        "brace_crossings": ("brace_list", "braces_asked",),
        "brace_unmet": ("braces_asked", "brace_crossings", "plate_shapes",),
        "brace_low": ("brace_list",),
        "brace_tallest_top": ("brace_list",),
        "brace_tallest_back": ("brace_list",),
        "brace_places_top": ("brace_list",),
        "brace_places_back": ("brace_list",),
        "brace_legs": ("brace_list", "brace_crossings",),
        "brace_bridge": ("body_shells", "bridge_outline", "body_edge",),
        "brace_pins": ("body_shells", "bridge_hold_x", "bridge_hold_y", "bridge_hold", "body_edge",),
    },
    "gramil.parts.bridge": {
        "bridge_front_edge": ("saddle_position", "bridge_front",),
        "bridge_front_from_nut": ("bridge_front_edge", "board_nut_position",),
        "bridge_front_from_join": ("bridge_front_edge", "back_bow_length",),
        "bridge_front_from_octave": ("bridge_front_edge", "fret_position", "action_fret",),
        "bridge_outline": ("bridge_front_edge", "string_saddle_slant", "bridge_length", "bridge_width",),
        "bridge_width_square": ("bridge_width", "string_saddle_slant",),
        "bridge_hold_row": ("bridge_hold", "bridge_rows", "bridge_front_row", "strings_course",),
        "bridge_hold_slant": ("bridge_hold_line", "saddle_slant", "string_saddle_slant",),
        "bridge_hold_y": ("bridge_hold", "bridge_rows", "bridge_hold_spread", "string_y_bridge", "strings_course",),
        "bridge_hold_x": ("saddle_position", "bridge_hold_behind", "bridge_hold_slant", "bridge_hold_y", "bridge_hold_row", "bridge_rows_apart",),
        "bridge_hold_second": ("bridge_hold_behind", "bridge_rows_apart", "bridge_hold_row",),
        "bridge_hold_back": ("bridge_front_edge", "bridge_width", "string_saddle_slant", "bridge_hold_x", "bridge_hold_y", "bridge_pin_diameter",),
        "bridge_hold_step": ("bridge_hold_x", "bridge_hold_y", "bridge_hold_row",),
        "bridge_hold_across": ("bridge_hold_x", "bridge_hold_y", "bridge_hold_row",),
        "bridge_hold_spacing": ("bridge_hold_step", "bridge_pin_diameter",),
        "bridge_hold_between": ("bridge_hold_across", "bridge_pin_diameter",),
        "bridge_hold_wood": ("bridge_hold_step", "bridge_pin_diameter",),
        "bridge_hold_wood_across": ("bridge_hold_across", "bridge_pin_diameter",),
        "bridge_hold_clear": ("bridge_hold_x", "bridge_hold_y", "saddle_break_x", "string_y_bridge", "bridge_pin_diameter", "strings_gauges",),
        "bridge_hold_wall": ("bridge_hold_behind_slot", "saddle_thickness", "bridge_pin_diameter",),
        "bridge_hold_behind_slot": ("bridge_hold_x", "bridge_hold_y", "saddle_position", "saddle_slant",),
        "bridge_break_run": ("bridge_hold_x", "bridge_hold_y", "saddle_break_x", "string_y_bridge", "bridge_pin_diameter",),
        "bridge_break_angle": ("neck_set_exposed", "bridge_hold_below", "bridge_break_run",),
        "bridge_under_slot": ("bridge_thickness", "saddle_slot_depth",),
        "bridge_lever": ("neck_set_over_top", "top_thickness",),
        "bridge_torque": ("string_pull", "bridge_lever",),
        "bridge_torque_least": ("limit_torque_least", "limit_torque_of_second", "strings_course",),
        "bridge_torque_most": ("limit_torque_most", "limit_torque_of_second", "strings_course",),
    },
    "gramil.parts.bridge_plate": {
        "plate_front": ("body_saddle", "bridge_plate_ahead",),
        "plate_back": ("body_saddle", "bridge_plate_behind",),
        "plate_slant": ("plate_front", "bridge_plate_lean", "string_saddle_slant",),
        "plate_lean": ("plate_slant",),
        "plate_shapes": ("body_outlines", "plate_front", "plate_back", "bridge_plate_length_front", "bridge_plate_length_back", "bridge_plate_thickness", "plate_slant",),
        "plate_outside": ("plate_shapes", "body_shells",),
        "plate_width": ("plate_front", "plate_back", "plate_slant",),
        "plate_length": ("bridge_plate_length_front", "bridge_plate_length_back", "plate_slant",),
    },
    "gramil.parts.cards": {
        "card_arches": ("arch_surface", "nut_width", "fret_position", "board_width_at_fret", "board_tail_position", "board_width_at_tail",),
        "card_depths": ("slot_depth_setting", "slot_depth_at_crest", "slot_need",),
        "card_gaps": ("blank_thickness", "board_thickness", "thickness_at_edge_treble", "thickness_at_edge_bass",),
        "card_notch_depth": ("shop_template_pin",),
        "card_notch_wall": ("template_notch", "slot_first", "template_notch_width",),
        "card_nut_notch_wall": ("template_notch", "slot_first", "template_nut_notch", "template_notch_width",),
        "card_nut_notch_stands": ("card_nut_notch_wall", "shop_template_pin",),
        "card_notches_serve": ("fret_slant", "card_notch_wall", "shop_template_pin",),
        "card_proof_notch": ("template_notch", "template_nut_notch", "card_nut_notch_stands", "slot_first",),
        "card_proof_octave": ("template_notch", "card_proof_notch",),
        "card_proof_pin": ("card_proof_notch", "template_pin_first",),
        "card_rail_head": ("template_notch", "template_nut_notch", "template_pin_first", "template_pin_reach",),
        "card_rail_tail": ("template_notch", "template_pin_last", "template_pin_reach",),
        "card_rail_back": ("blank_width",),
        "card_rail_front": ("blank_width", "card_notch_depth", "shop_template_pin",),
    },
    "gramil.parts.channels": {
        "channel_edge_top": ("top_binding_thickness", "top_binding_height", "top_binding_purfling", "top_binding_purfling_depth", "top_binding_wood", "top_binding_material", "graduated_edge",),
        "channel_edge_back": ("back_binding_thickness", "back_binding_height", "back_binding_purfling", "back_binding_purfling_depth", "back_binding_wood", "back_binding_material", "body_back_thickness",),
        "channel_edges": ("body_sides", "channel_edge_top", "channel_edge_back",),
        "channel_lines": ("channel_edges", "body_outlines",),
        "channel_list": ("channel_edges", "body_wall", "body_linings", "body_linings_height",),
        "channel_side_left": ("channel_edges", "side_shallowest",),
        "channel_tilts": ("channel_edges", "body_sides",),
        "channel_cuts": ("channel_edges", "shop_cutters", "limit_binding_proud_least", "limit_binding_proud_most", "shop_units",),
        "channel_flush_cutter": ("shop_cutters",),
    },
    "gramil.parts.dome_year": {
        "dome_brace_width": ("across_holders", "across_unheld", "top_brace_width",),
        "dome_brace_height": ("across_height", "across_unheld", "top_brace_height",),
        "dome_brace_spacing": ("across_holders", "across_unheld", "across_area", "top_brace_spacing",),
        "dome_curl": ("dome_brace_width", "dome_brace_height", "dome_brace_spacing", "top_thickness", "top_modulus_across", "top_brace_modulus",),
        "dome_curvature_dry": ("top_radius", "dome_curl", "top_movement_radial", "swell_moisture_dry", "swell_moisture_made",),
        "dome_curvature_dry_least": ("dome_curvature_dry", "top_radius", "limit_dome_change_kept_least",),
        "dome_curvature_wet": ("top_radius", "dome_curl", "top_movement_radial", "swell_moisture_wet", "swell_moisture_made",),
        "dome_curvature_wet_least": ("dome_curvature_wet", "top_radius", "limit_dome_change_kept_least",),
        "dome_across": ("body_width",),
        "dome_rise_dry": ("dome_curvature_dry", "dome_across",),
        "dome_rise_made": ("top_radius", "dome_across",),
        "dome_rise_wet": ("dome_curvature_wet", "dome_across",),
        "dome_rise_dry_least": ("dome_curvature_dry_least", "dome_across",),
        "dome_rise_wet_least": ("dome_curvature_wet_least", "dome_across",),
    },
    "gramil.parts.downhill": {
        "downhill_treble": ("body_outlines", "bend_treble", "instrument_handed",),
    },
    "gramil.parts.features": {
        "feature_list": ("braces_asked", "brace_zeros", "soundhole_centre", "soundhole_held_to", "plate_shapes",),
    },
    "gramil.parts.foot": {
        "foot_there": ("instrument_build",),
        "foot_cheek": ("foot_there", "carve_form", "body_edge",),
        "foot_slot_bottom": ("foot_there", "carve_slots_apart",),
        "foot_slot_depth": ("foot_cheek", "foot_slot_bottom",),
        "foot_slot_depth_at_cap": ("carve_heel_width", "foot_slot_bottom",),
        "foot_slot_width": ("foot_there", "body_wall", "carve_slot_room",),
        "foot_slot_inner": ("foot_slot_bottom", "body_outlines",),
        "foot_slot_outer": ("foot_cheek", "body_outlines",),
        "foot_slot_place": ("body_edge", "foot_slot_outer",),
        "foot_slot_angle": ("foot_slot_outer", "foot_slot_inner", "foot_slot_depth",),
        "foot_slot_bow": ("foot_slot_bottom", "foot_cheek", "foot_slot_inner", "foot_slot_outer", "body_outlines",),
        "foot_step": ("foot_there", "graduated_edge",),
        "foot_height": ("foot_there", "body_depth_neck",),
        "foot_length": ("foot_there", "body_neck_block",),
        "foot_end": ("body_edge", "foot_length",),
        "foot_reach": ("foot_end", "neck_angle_face", "neck_heel_depth",),
        "foot_behind_slots": ("foot_length", "foot_slot_outer", "foot_slot_inner", "foot_slot_width", "foot_slot_angle",),
        "foot_heel_over": ("neck_heel_depth", "foot_step", "foot_height",),
        "foot_toe_room": ("foot_length", "carve_foot_toe", "body_neck_block_width", "brace_list",),
    },
    "gramil.parts.found": {
        "found_slot_width": ("fret_position",),
        "found_slot_depth": ("fret_position",),
        "found_board_thickness": ("fret_position",),
        "found_arch_radius": ("fret_position",),
        "found_crown": ("fret_position",),
        "found_action_bass": (),
        "found_action_treble": (),
        "found_nut_bass": (),
        "found_nut_treble": (),
        "found_relief": (),
        "found_exposed_bass": (),
        "found_exposed_treble": (),
        "found_saddle_slot_width": (),
        "found_saddle_slot_depth": (),
        "found_pin": (),
        "found_saddle_bass": (),
        "found_saddle_treble": (),
        "found_straightedge": ("neck_straightedge", "repair_described",),
        "found_lie_first": (),
        "found_lie_last": ("scale_join",),
        "found_slot_width_least": ("found_slot_width",),
        "found_slot_width_most": ("found_slot_width",),
        "found_slot_width_mean": ("found_slot_width",),
        "found_slot_depth_least": ("found_slot_depth",),
        "found_left_least": ("found_board_thickness", "found_slot_depth",),
        "found_crown_least": ("found_crown",),
        "found_crown_mean": ("found_crown",),
        "found_crown_most": ("found_crown",),
        "found_crown_at_twelve": ("found_crown", "found_crown_mean",),
        "found_crown_at_saddle": ("found_crown", "found_crown_mean", "found_lie_first", "found_lie_last", "fret_position", "height_saddle_x",),
    },
    "gramil.parts.hands": {
        "hand_strings": ("instrument_handed",),
        "hand_frets": ("fret_slant", "instrument_handed",),
        "hand_saddle": ("saddle_slant", "instrument_handed",),
        "hand_braces": ("brace_list", "instrument_handed",),
        "hand_posts": ("head_posts_x", "head_posts_y", "instrument_handed",),
    },
    "gramil.parts.head": {
        "head_outline": ("head_curve",),
        "head_reach": ("head_outline", "head_posts_x", "limit_head_beyond",),
        "head_width": ("head_outline", "head_posts_y", "limit_head_beside",),
        "head_hole_to_edge": ("head_outline", "head_posts_x", "head_posts_y", "head_hole", "head_tuners", "head_hole_to_face",),
        "head_hole_to_face": ("head_post_height", "head_thickness", "head_hole", "head_tuners",),
        "head_roller_depth": ("head_post_height", "head_tuners",),
        "head_slots": ("head_tuners", "head_posts_x", "head_posts_y", "head_slot_width", "head_hole",),
        "head_slots_apart": ("head_slots",),
        "head_holes_apart": ("head_posts_x", "head_posts_y", "head_hole", "head_tuners",),
        "head_scarf_length": ("head_blank", "head_angle",),
        "head_slot_over_face": ("nut_slot_over_crest", "thickness_at_crest",),
        "head_run": ("head_posts_x", "head_nut_thickness", "head_angle", "head_post_height",),
        "head_drop": ("head_slot_over_face", "head_posts_x", "head_nut_thickness", "head_angle", "head_post_height", "head_veneer",),
        "head_break_angle": ("head_drop", "head_run", "head_posts_y", "string_y_nut", "height_slope",),
        "head_sideways_bend": ("head_posts_y", "string_y_nut", "head_run", "string_splay",),
        "head_post_clear": ("head_posts_x", "head_posts_y", "string_y_nut", "head_tuners",),
        "head_straight_y": ("string_y_nut", "string_splay", "head_run",),
        "head_entry": ("head_slot_over_face", "head_veneer", "head_nut_thickness", "head_angle", "head_roller_depth",),
        "head_slot_room": ("head_slots", "head_entry", "head_posts_y", "string_y_nut", "strings_gauges",),
        "head_slot_ramp": ("head_slots", "head_entry", "head_posts_x", "head_roller_depth", "head_slot_over_face", "head_veneer", "head_nut_thickness", "head_angle",),
    },
    "gramil.parts.heights": {
        "action_fret": ("fret_position",),
        "action_share": ("string_y", "action_fret",),
        "action_wanted": ("heights_action_treble", "heights_action_bass", "action_share",),
        "action_nut_fret": ("heights_nut_over", "scale_zero_fret",),
        "action_nut": ("heights_nut_treble", "heights_nut_bass", "action_share", "scale_zero_fret",),
        "crown_height": ("wire_crown_height", "heights_dressing_loss", "found_crown_mean", "repair_described", "repair_refret",),
        "crown_top": ("crown_height", "arch_fall_under_string", "relief_rise", "lean_under_string",),
        "height_slope": ("crown_top", "action_wanted", "action_nut", "action_fret", "action_nut_fret", "string_x",),
        "height_at_zero": ("crown_top", "action_wanted", "action_fret", "height_slope", "string_x",),
        "height_over_crown": ("height_at_zero", "height_slope", "string_x", "crown_top",),
        "height_at_scale_end": ("height_at_zero", "height_slope", "string_scale_end_x", "string_x",),
        "height_saddle_x": ("saddle_break_x", "string_scale_end_x",),
        "height_run": ("height_saddle_x", "string_x",),
        "height_at_saddle": ("height_at_zero", "height_slope", "height_run",),
        "height_over_chord": ("height_at_saddle", "crown_top", "height_saddle_x", "string_x", "scale_join",),
        "height_saddle_share": ("height_run", "string_x", "action_fret",),
        "height_at_saddle_unloaded": ("height_at_saddle", "heights_body_rise", "height_saddle_share",),
    },
    "gramil.parts.intonation": {
        "intonation_paths": ("string_length", "string_fraction", "height_at_zero", "height_at_scale_end", "crown_top", "intonation_ratio", "intonation_finger",),
        "intonation_ratio": ("scale_cents",),
        "intonation_finger": ("string_fraction", "string_length", "intonation_finger_offset",),
        "intonation_strings": ("string_stretch", "string_bending_radius", "string_stretch_length",),
        "intonation_weights": ("fret_position", "intonation_from_fret", "intonation_to_fret",),
        "intonation_cents_before": ("intonation_paths", "intonation_strings",),
        "intonation_best": ("intonation_paths", "intonation_strings", "intonation_weights", "intonation_nut_freedom", "intonation_saddle_freedom",),
        "intonation_best_saddle": ("intonation_paths", "intonation_strings", "intonation_weights", "intonation_nut_forward", "intonation_saddle_freedom",),
        "intonation_break_point": ("strings_course", "intonation_pair",),
        "intonation_nut_freedom": ("intonation_nut", "scale_zero_fret", "intonation_weights", "intonation_break_point",),
        "intonation_saddle_freedom": ("intonation_saddle", "string_y_bridge", "intonation_break_point",),
        "intonation_nut_best": ("intonation_best",),
        "intonation_saddle_best": ("intonation_best",),
        "intonation_rms_best": ("intonation_best",),
        "intonation_nut_forward": ("intonation_nut_given", "intonation_nut_best", "intonation_file_to",),
        "intonation_paths_made": ("intonation_paths", "intonation_nut_forward", "saddle_set_back",),
        "intonation_cents_after": ("intonation_paths_made", "intonation_strings",),
        "intonation_rms_before": ("intonation_cents_before", "intonation_weights",),
        "intonation_rms_after": ("intonation_cents_after", "intonation_weights",),
        "intonation_rms_all_before": ("intonation_rms_before",),
        "intonation_rms_all_after": ("intonation_rms_after",),
        "intonation_rms_softest": ("intonation_paths_made", "string_stretch_least", "string_bending_radius", "string_stretch_length", "intonation_weights",),
        "intonation_rms_stiffest": ("intonation_paths_made", "string_stretch_most", "string_bending_radius", "string_stretch_length", "intonation_weights",),
        "intonation_octave_move": ("string_length",),
    },
    "gramil.parts.lean": {
        "lean_at_tail": ("board_edge_tail_treble", "board_edge_tail_bass", "board_edge_nut_treble", "board_edge_nut_bass", "board_thickness", "arch_fall_at_tail_end", "nut_width", "board_width_at_tail",),
        "lean_at_nut": ("board_edge_nut_treble", "board_edge_nut_bass", "lean_at_tail", "nut_width", "board_width_at_tail",),
        "lean_wedge": ("board_edge_nut_treble", "board_edge_nut_bass", "lean_at_nut", "board_thickness", "arch_fall_at_nut_end",),
        "lean_under_string": ("lean_at_nut", "lean_at_tail", "string_x", "string_y", "board_tail_position", "nut_width", "board_growth",),
        "lean_at_edge_treble": ("lean_at_nut", "lean_at_tail", "edge_x_treble", "board_tail_position",),
        "lean_at_edge_bass": ("lean_at_nut", "lean_at_tail", "edge_x_bass", "board_tail_position",),
        "lean_at_slot_treble": ("lean_at_edge_treble", "core_y_treble", "edge_y_treble",),
        "lean_at_slot_bass": ("lean_at_edge_bass", "core_y_bass", "edge_y_bass",),
        "lean_over_middle": ("lean_at_nut", "lean_at_tail", "lean_wedge",),
        "lean_corner_nut_treble": ("lean_at_nut", "lean_at_tail", "lean_wedge", "board_thickness", "arch_fall_at_nut_end",),
        "lean_corner_nut_bass": ("lean_at_nut", "lean_at_tail", "lean_wedge", "board_thickness", "arch_fall_at_nut_end",),
        "lean_corner_tail_treble": ("lean_at_nut", "lean_at_tail", "lean_wedge", "board_thickness", "arch_fall_at_tail_end",),
        "lean_corner_tail_bass": ("lean_at_nut", "lean_at_tail", "lean_wedge", "board_thickness", "arch_fall_at_tail_end",),
    },
    "gramil.parts.markers": {
        "marker_position": ("fret_position",),
        "marker_slant": ("fret_slant",),
        "marker_offset": ("board_width_at_fret",),
        "marker_side_depth": ("thickness_at_edge_bass", "markers_side_diameter",),
    },
    "gramil.parts.moved": {
        "moved_treble": ("height_saddle_x", "nut_set_forward", "found_saddle_treble",),
        "moved_bass": ("height_saddle_x", "nut_set_forward", "found_saddle_bass",),
        "moved_wanted_treble": ("height_saddle_x", "nut_set_forward",),
        "moved_wanted_bass": ("height_saddle_x", "nut_set_forward",),
        "moved_slots_overlap": ("moved_treble", "moved_bass", "found_saddle_slot_width", "saddle_thickness",),
    },
    "gramil.parts.movement": {
        "swell_moisture_made": ("limit_gluing_humidity", "limit_owner_temperature",),
        "swell_moisture_dry": ("limit_owner_humidity_least", "limit_owner_temperature",),
        "swell_moisture_wet": ("limit_owner_humidity_most", "limit_owner_temperature",),
        "swell_moistures": ("swell_moisture_dry", "swell_moisture_made", "swell_moisture_wet",),
        "swell_width_dry_least": ("core_width_at_fret", "board_movement_radial", "swell_moisture_dry", "swell_moisture_made",),
        "swell_width_dry_most": ("core_width_at_fret", "board_movement_tangential", "swell_moisture_dry", "swell_moisture_made",),
        "swell_width_wet_least": ("core_width_at_fret", "board_movement_radial", "swell_moisture_wet", "swell_moisture_made",),
        "swell_width_wet_most": ("core_width_at_fret", "board_movement_tangential", "swell_moisture_wet", "swell_moisture_made",),
        "sprout_least": ("swell_width_dry_least",),
        "sprout_most": ("swell_width_dry_most",),
        "sprout_moisture": ("limit_sprout", "core_width_at_fret", "board_movement_tangential", "swell_moisture_dry",),
        "swell_step_dry": ("core_inset", "thickness_at_edge_treble", "board_movement_tangential", "swell_moisture_dry", "swell_moisture_made",),
    },
    "gramil.parts.neck_blank": {
        "plank_scarfed": ("carve_scarf", "head_angle",),
        "plank_head_start": ("board_nut_position", "head_nut_thickness",),
        "plank_tail": ("back_bow_length", "carve_tenon", "foot_there", "foot_reach",),
        "plank_shaft": ("plank_tail", "plank_head_start",),
        "plank_head_along": ("head_reach", "head_nut_thickness",),
        "plank_scarf_run": ("plank_scarfed", "head_blank", "head_angle",),
        "plank_saw_run": ("plank_scarfed", "limit_rip_kerf", "head_angle",),
        "plank_head_rest": ("plank_scarfed", "plank_head_along", "head_scarf_length", "head_angle",),
        "plank_length": ("plank_shaft", "plank_scarf_run", "plank_saw_run", "plank_head_rest", "shop_allowance_length",),
        "plank_head_fall": ("plank_head_along", "head_angle", "head_thickness", "head_veneer",),
        "plank_thickness": ("head_blank", "carve_heel", "neck_heel_depth", "plank_scarfed", "plank_head_fall",),
        "plank_over": ("head_blank", "carve_deepest",),
        "plank_width": ("carve_form", "plank_tail", "carve_ears", "head_width", "shop_allowance_side", "foot_there", "body_neck_block_width",),
        "plank_toe": ("carve_heel", "neck_heel_depth", "head_blank", "foot_there", "carve_foot_toe", "carve_foot_toe_height",),
        "plank_heel_blocks": ("plank_toe", "neck_heel_depth", "head_blank", "carve_heel_curve", "plank_tail", "shop_allowance_length",),
        "plank_ear": ("carve_ears", "head_width", "plank_width",),
        "plank_pieces": ("plank_length", "plank_width", "plank_thickness", "plank_heel_blocks", "plank_ear", "plank_head_along",),
        "plank_strip_length": ("plank_pieces", "limit_rip_kerf",),
        "plank_yields": ("shop_blanks", "shop_kept", "carve_wood", "plank_pieces", "limit_rip_kerf",),
        "plank_choice": ("plank_yields",),
        "plank_layout": ("plank_choice", "plank_pieces", "plank_strip_length", "limit_rip_kerf",),
    },
    "gramil.parts.neck_carve": {
        "carve_shape": ("carve_exponent_at_1", "carve_exponent_at_10", "carve_blend_exponent", "carve_blend_at_1", "carve_blend_at_10",),
        "carve_form": ("carve_shape", "fret_position", "board_width_at_fret", "section_neck_depth",),
        "carve_heel_start": ("back_bow_length", "carve_heel_length",),
        "carve_heel_cap_start": ("back_bow_length", "carve_heel_cap",),
        "carve_stations": ("carve_station_frets", "fret_position", "carve_form", "thickness_at_crest", "carve_heel_start",),
        "carve_gauged": ("carve_stations",),
        "carve_facet_angle": ("carve_facets",),
        "carve_lines": ("carve_stations", "carve_facets",),
        "carve_flat_back": ("carve_lines", "carve_facets",),
        "carve_heel_curve": ("carve_form", "carve_heel_start", "carve_heel_cap_start", "neck_heel_depth",),
        "carve_deepest": ("section_neck_depth",),
    },
    "gramil.parts.neck_section": {
        "neck_section_board_slotted": ("slots_bottom", "section_slotted_straight", "section_slotted_following",),
        "neck_section_bars": ("neck_bars", "neck_bar_width", "neck_bar_depth", "neck_bar_modulus", "neck_modulus",),
        "neck_section_bars_alone": ("neck_bars", "neck_bar_width", "neck_bar_depth", "neck_bar_modulus",),
        "neck_section_channel": ("neck_rod", "neck_rod_width", "neck_rod_depth", "neck_modulus",),
        "neck_section_below": ("section_neck", "neck_modulus", "neck_section_bars", "neck_section_channel",),
        "neck_section_whole": ("section_board", "board_modulus", "neck_section_below",),
        "neck_section_slotted": ("neck_section_board_slotted", "board_modulus", "neck_section_below",),
        "neck_section_stiffness": ("neck_section_whole",),
        "neck_section_stiffness_slotted": ("neck_section_slotted",),
        "neck_section_stiffness_most": ("neck_section_whole", "neck_section_bars_alone", "limit_modulus_most",),
        "neck_section_stiffness_least": ("neck_section_slotted", "neck_section_bars_alone", "limit_modulus_least",),
        "neck_section_slots_keep": ("neck_section_stiffness_slotted", "neck_section_stiffness",),
        "neck_section_axis": ("neck_section_whole",),
        "neck_section_channel_depth": ("neck_rod", "neck_rod_depth", "neck_bars", "neck_bar_depth",),
        "neck_section_under_channel": ("section_neck_depth", "neck_section_channel_depth",),
    },
    "gramil.parts.neck_set": {
        "neck_set_run": ("height_saddle_x", "back_bow_length",),
        "neck_set_run_mean": ("neck_set_run",),
        "neck_set_height_mean": ("height_at_saddle_unloaded",),
        "neck_set_board_at_join": ("scale_join", "thickness_at_crest",),
        "neck_set_dome_rise": ("top_rise", "top_radius", "top_length", "neck_set_run_mean",),
        "neck_set_bridge_top": ("neck_set_dome_rise", "bridge_thickness",),
        "neck_angle_target": ("neck_set_bridge_top", "saddle_exposed", "neck_set_board_at_join", "neck_set_run_mean", "neck_set_height_mean",),
        "neck_set_crown_read": ("found_crown_at_saddle", "crown_height",),
        "neck_angle_made": ("neck_straightedge", "repair_reset", "neck_set_bridge_top", "neck_set_board_at_join", "neck_set_run_mean", "neck_set_crown_read", "neck_angle_target",),
        "neck_angle_face": ("neck_angle_target", "thickness_wedge_angle",),
        "neck_set_straightedge": ("neck_set_board_at_join", "neck_set_run_mean", "neck_angle_target", "crown_height", "neck_set_bridge_top",),
        "neck_set_straightedge_on_board": ("neck_set_straightedge", "crown_height", "neck_angle_target",),
        "neck_set_straightedge_over_top": ("neck_set_straightedge", "bridge_thickness",),
        "heel_wedge": ("neck_angle_face", "neck_heel_depth",),
        "heel_wedge_to_take": ("neck_angle_target", "neck_angle_made", "neck_heel_depth",),
        "neck_set_exposed": ("neck_set_board_at_join", "neck_set_run", "neck_angle_made", "height_at_saddle_unloaded", "neck_set_bridge_top",),
        "neck_set_exposed_mean": ("neck_set_exposed",),
        "neck_set_over_top": ("neck_set_exposed", "bridge_thickness",),
        "neck_set_over_top_mean": ("neck_set_exposed_mean", "bridge_thickness",),
        "neck_set_action": ("action_wanted", "neck_set_exposed_mean", "saddle_exposed", "height_saddle_share",),
        "neck_set_tongue_gap": ("board_tail_position", "back_bow_length", "neck_angle_face", "top_radius", "top_length",),
        "neck_set_drop": ("neck_angle_face", "scale_join", "fret_position", "board_nut_position",),
    },
    "gramil.parts.nut_slots": {
        "nut_slot_over_board": ("crown_height", "height_over_crown", "height_slope", "nut_set_forward", "scale_zero_fret", "limit_zero_fret_drop",),
        "nut_slot_over_crest": ("nut_slot_over_board", "arch_fall_under_string", "lean_under_string",),
        "nut_slot_over_first": ("height_over_crown",),
        "nut_slot_depth": ("strings_gauges", "strings_course", "limit_nut_slot_share",),
        "nut_slot_width": ("strings_gauges", "limit_nut_slot_room",),
        "nut_slot_top": ("nut_slot_over_crest", "nut_slot_depth",),
        "nut_slot_blank": ("nut_slot_top", "thickness_at_crest",),
    },
    "gramil.parts.openings": {
        "opening_main": ("openings_asked", "soundhole_centre", "soundhole_wide", "soundhole_long", "top_thickness",),
        "opening_further": ("openings_asked", "body_zeros", "top_thickness",),
        "opening_list": ("opening_main", "opening_further",),
        "opening_shaped": ("opening_list",),
        "opening_to_braces": ("opening_further", "brace_list",),
        "opening_to_linings": ("opening_list", "body_shells",),
        "opening_to_blocks": ("opening_list", "body_blocks",),
        "opening_to_board": ("opening_list", "soundhole_from_board", "board_outline", "body_edge",),
        "opening_to_plate": ("opening_list", "plate_shapes",),
        "opening_reach": ("opening_list", "rosette_rings",),
        "opening_to_others": ("opening_list", "opening_reach",),
        "opening_to_edge": ("opening_list", "opening_reach", "body_outlines",),
        "opening_cutter": ("shop_cutters",),
        "opening_cutter_radius": ("opening_cutter",),
    },
    "gramil.parts.pairs": {
        "pair_paths": ("intonation_paths", "intonation_nut_forward",),
        "pair_rms_on_one": ("pair_paths", "intonation_strings", "intonation_weights", "strings_course",),
        "pair_rms_on_two": ("pair_paths", "intonation_strings", "intonation_weights",),
        "pair_rms_all_on_one": ("pair_rms_on_one",),
        "pair_rms_all_on_two": ("pair_rms_on_two",),
    },
    "gramil.parts.port": {
        "port_list": ("ports_asked", "body_sides", "body_wall", "body_linings_height", "bevel_laid", "bevelled_blocks",),
        "port_bass": ("port_list",),
        "port_treble": ("port_list",),
        "port_to_linings": ("port_list", "body_sides", "body_linings_height",),
        "port_to_blocks": ("port_list", "body_sides", "body_blocks",),
        "port_to_others": ("port_list",),
        "port_bends": ("port_list", "body_sides",),
    },
    "gramil.parts.refret": {
        "refret_fits": ("shop_wires", "found_slot_width_least", "found_slot_width_most", "found_slot_depth_least",),
        "refret_verdicts": ("refret_fits", "limit_fit_tightest", "limit_fit_loosest", "limit_bead_bite_caution", "limit_bead_bite_stop", "limit_clearance_least",),
        "refret_crowns": ("shop_wires", "found_crown_most", "found_crown_at_twelve", "heights_dressing_loss",),
        "refret_wedges": ("shop_wires", "found_slot_width_mean", "limit_bead_share_most",),
        "refret_bows": ("refret_wedges", "limit_wedge_kept_least", "limit_wedge_kept_most", "back_bow_row", "back_bow_span",),
        "refret_chosen": ("refret_fits", "wire_name",),
        "refret_chosen_bow": ("refret_bows", "wire_name",),
        "refret_room": ("refret_chosen",),
    },
    "gramil.parts.relief": {
        "relief_curvature": ("heights_relief", "back_bow_span",),
        "relief_rise": ("relief_curvature", "back_bow_length", "string_x",),
        "relief_lever": ("height_over_crown", "crown_height", "arch_fall_under_string", "thickness_at_crest", "neck_section_axis", "lean_under_string",),
        "relief_stations": ("fret_position", "back_bow_length",),
        "relief_neck": ("relief_stations", "fret_position", "neck_section_stiffness_most", "neck_section_stiffness_least", "relief_lever", "height_saddle_x",),
        "relief_under_pull_least": ("relief_neck", "string_pull_total",),
        "relief_under_pull_most": ("relief_neck", "string_pull_total",),
        "relief_predicted_least": ("relief_under_pull_least", "back_bow_most",),
        "relief_predicted_most": ("relief_under_pull_most", "back_bow_least",),
        "relief_for_rod_least": ("relief_predicted_least", "heights_relief",),
        "relief_for_rod_most": ("relief_predicted_most", "heights_relief",),
        "relief_rod_moment_least": ("relief_for_rod_least", "relief_neck", "neck_rod",),
        "relief_rod_moment_most": ("relief_for_rod_most", "relief_neck", "neck_rod",),
    },
    "gramil.parts.reset": {
        "reset_angle_found": ("found_straightedge", "found_crown_at_saddle", "neck_set_bridge_top", "neck_set_board_at_join", "neck_set_run_mean",),
        "reset_angle": ("neck_angle_target", "reset_angle_found",),
        "reset_wedge": ("reset_angle", "neck_heel_depth",),
        "reset_tongue": ("reset_angle", "board_tail_position", "back_bow_length",),
        "reset_tongue_left": ("reset_tongue", "board_thickness",),
        "reset_exposed": ("neck_set_board_at_join", "neck_set_run", "neck_angle_target", "height_at_saddle_unloaded", "neck_set_bridge_top",),
    },
    "gramil.parts.rim_at_bevel": {
        "bevelled_blocks": ("bevel_laid", "channel_edges", "body_wall", "body_linings", "body_linings_height", "limit_strip_over",),
        "bevelled_more": ("bevel_laid", "bevelled_blocks", "body_linings", "body_linings_height",),
        "bevelled_bindings": ("bevel_laid", "channel_edges", "limit_strip_over",),
        "bevelled_braces": ("bevel_laid", "bevelled_blocks", "brace_list", "body_wall", "body_linings",),
        "bevelled_holes": ("bevel_laid", "bevelled_blocks", "opening_list", "body_wall", "body_linings",),
        "bevelled_ports": ("bevel_laid", "bevelled_blocks", "port_bass",),
    },
    "gramil.parts.rod_channel": {
        "rod_start": ("neck_rod", "carve_rod_access", "plank_head_start", "carve_rod_pocket", "rod_body_end", "rod_asked",),
        "rod_start_away": ("rod_start",),
        "rod_body_end": ("neck_rod", "back_bow_length", "plank_tail", "carve_rod_access", "carve_rod_clear",),
        "rod_asked": ("carve_rod_length", "carve_rod_access", "rod_body_end", "plank_head_start", "carve_rod_pocket", "rod_nut_end",),
        "rod_nut_end": ("neck_rod", "board_nut_position", "carve_rod_clear",),
        "rod_end": ("rod_start", "rod_asked",),
        "rod_blind_left": ("rod_start", "rod_end", "carve_rod_access", "board_nut_position", "plank_tail",),
        "rod_unreached": ("rod_start", "rod_end", "carve_rod_access", "board_nut_position", "back_bow_length",),
        "rod_over": ("slot_left_at_crest", "fret_position", "slot_first", "rod_start", "rod_end",),
        "rod_corner": ("carve_form", "fret_position", "neck_rod_width", "neck_rod_depth", "neck_rod",),
        "rod_under_head": ("neck_rod", "carve_rod_access", "head_thickness", "head_veneer", "head_angle", "neck_rod_depth",),
    },
    "gramil.parts.saddle": {
        "saddle_set_back_best": ("intonation_best_saddle",),
        "saddle_set_back": ("saddle_set_back_given", "saddle_set_back_best", "string_y_bridge", "intonation_saddle", "intonation_file_to",),
        "saddle_break_x": ("string_scale_end_x", "saddle_set_back",),
        "saddle_slant": ("saddle_break_x", "string_y_bridge",),
        "saddle_position": ("saddle_break_x", "string_y_bridge", "saddle_slant",),
        "saddle_off_line": ("saddle_break_x", "string_y_bridge", "saddle_slant", "saddle_position",),
        "saddle_to_face": ("saddle_off_line", "saddle_thickness",),
        "saddle_angle": ("saddle_slant",),
        "saddle_reach": ("bridge_spread", "saddle_beyond",),
        "saddle_end_treble": ("saddle_position", "saddle_slant", "saddle_reach",),
        "saddle_end_bass": ("saddle_position", "saddle_slant", "saddle_reach",),
        "saddle_length": ("saddle_reach", "saddle_slant",),
        "saddle_tall": ("saddle_slot_depth", "neck_set_exposed",),
        "saddle_showing": ("neck_set_exposed", "saddle_slot_depth",),
        "saddle_blank_height": ("saddle_tall",),
    },
    "gramil.parts.saw": {
        "saw_main": ("shop_saws", "wire_tang_thickness", "slots_bottom", "slots_cut", "slots_saw", "slot_fall_greatest",),
        "saw_deepening": ("shop_saws", "slots_bottom", "slots_cut", "saw_main",),
        "saw_kerf": ("saw_main",),
        "saw_kerf_over": ("saw_deepening", "saw_kerf",),
    },
    "gramil.parts.scale": {
        "scale_run_bass": ("scale_bass", "scale_sideways",),
        "scale_run_treble": ("scale_treble", "scale_sideways",),
        "scale_lead": ("scale_run_bass", "scale_run_treble", "scale_square_at_cents",),
        "scale_run": ("scale_run_bass", "scale_run_treble",),
        "fret_fraction": ("scale_cents",),
        "fret_x_bass": ("fret_fraction", "scale_run_bass", "scale_lead",),
        "fret_x_treble": ("fret_fraction", "scale_run_treble", "scale_lead",),
        "fret_position": ("fret_x_bass", "fret_x_treble",),
        "fret_step": ("fret_position",),
        "fret_half_spread": ("fret_fraction", "nut_spread", "bridge_spread",),
        "fret_slant": ("fret_x_bass", "fret_x_treble", "fret_half_spread",),
        "fret_angle": ("fret_slant",),
        "fret_cents_per_mm": ("fret_fraction", "scale_run_bass", "scale_run_treble",),
        "fret_cents_per_tenth": ("fret_cents_per_mm",),
    },
    "gramil.parts.section": {
        "section_board": ("arch_surface", "fret_position", "core_width_at_fret", "thickness_at_crest",),
        "section_slotted_straight": ("core_width_at_fret", "thickness_at_crest", "slot_need", "slot_fall_greatest",),
        "section_slotted_following": ("arch_surface", "fret_position", "core_width_at_fret", "thickness_at_crest", "slot_need",),
        "section_neck_depth": ("neck_depth_first", "neck_depth_tenth", "fret_position", "thickness_at_crest",),
        "section_neck": ("carve_form",),
        "section_kept_straight": ("section_slotted_straight", "section_board",),
        "section_kept_following": ("section_slotted_following", "section_board",),
        "section_kept_straight_with_neck": ("section_slotted_straight", "section_board", "section_neck", "board_modulus", "neck_modulus",),
        "section_kept_following_with_neck": ("section_slotted_following", "section_board", "section_neck", "board_modulus", "neck_modulus",),
    },
    "gramil.parts.sides": {
        "side_length": ("body_sides",),
        "side_length_middle": ("body_sides", "body_wall",),
        "side_along": ("body_sides",),
        "side_upper": ("body_sides", "side_along",),
        "side_lower": ("body_sides", "side_along",),
        "side_depth": ("side_upper", "side_lower",),
        "side_stations": ("body_sides", "body_bouts",),
        "side_deepest": ("side_depth", "treble_side_depths",),
        "side_shallowest": ("side_depth", "treble_side_depths",),
        "side_extent": ("side_upper", "side_lower", "treble_side_extent",),
        "side_longer": ("side_length", "treble_side_length",),
        "side_blank_length": ("side_longer", "body_side_allowance",),
        "side_blank_width": ("side_extent", "body_side_over",),
    },
    "gramil.parts.slot_options": {
        "cutting_options": ("slot_need", "slot_fall_greatest", "slots_crest_loss", "slot_thinnest_at_crest", "slot_thinnest_at_end", "cutting_kept",),
        "cutting_kept": ("section_kept_straight", "section_kept_following", "section_kept_straight_with_neck", "section_kept_following_with_neck", "slot_first",),
    },
    "gramil.parts.slots": {
        "slot_need": ("wire_tang_depth", "slots_clearance",),
        "slot_fall_at_end": ("arch_fall_at_core_treble", "arch_fall_at_core_bass",),
        "slot_first": ("scale_zero_fret",),
        "slot_fall_greatest": ("slot_fall_at_end", "slot_first",),
        "slot_depth_at_crest": ("slot_need", "slot_fall_greatest", "slots_bottom",),
        "slot_depth_setting": ("slot_depth_at_crest", "slots_crest_loss", "slots_cut",),
        "slot_kerf_at_crest": ("slot_depth_setting", "slots_crest_loss", "slots_cut",),
        "slot_kerf_at_end": ("slot_kerf_at_crest", "slot_fall_at_end", "slots_bottom", "slots_cut",),
        "slot_depth_at_end": ("slot_need", "slot_kerf_at_end",),
        "slot_to_deepen": ("slot_depth_at_end", "slot_kerf_at_end",),
        "slot_left_at_crest": ("thickness_at_crest", "slot_kerf_at_crest",),
        "slot_thickness_at_end": ("thickness_crest_at_slot_treble", "arch_fall_at_core_treble", "thickness_crest_at_slot_bass", "arch_fall_at_core_bass",),
        "slot_left_at_treble_end": ("thickness_crest_at_slot_treble", "arch_fall_at_core_treble", "slot_need", "slot_kerf_at_crest", "slots_bottom", "slots_cut",),
        "slot_left_at_bass_end": ("thickness_crest_at_slot_bass", "arch_fall_at_core_bass", "slot_need", "slot_kerf_at_crest", "slots_bottom", "slots_cut",),
        "slot_left_at_end": ("slot_left_at_treble_end", "slot_left_at_bass_end",),
        "slot_left_least": ("slot_left_at_crest", "slot_left_at_end",),
        "slot_thinnest_at_crest": ("thickness_at_crest", "slot_first",),
        "slot_thinnest_at_end": ("slot_thickness_at_end", "slot_first",),
    },
    "gramil.parts.soundhole": {
        "soundhole_centre": ("soundhole_given", "soundhole_held_to", "body_zeros",),
        "soundhole_from_zero": ("soundhole_centre", "body_edge",),
        "soundhole_wide": ("soundhole_diameter", "soundhole_across",),
        "soundhole_long": ("soundhole_diameter", "soundhole_along",),
        "soundhole_edge_neck": ("soundhole_centre", "soundhole_long", "opening_main",),
        "soundhole_area": ("opening_main",),
        "soundhole_from_board": ("soundhole_edge_neck", "body_edge", "board_tail_position", "opening_main",),
        "rosette_rings": ("rosette_asked", "opening_list",),
    },
    "gramil.parts.string_lines": {
        "string_pair_nut": ("strings_gauges", "strings_course", "nut_pair", "nut_pair_by",),
        "string_pair_bridge": ("strings_gauges", "strings_course", "bridge_pair", "bridge_pair_by",),
        "string_y_nut": ("strings_gauges", "strings_course", "string_pair_nut", "nut_spread", "nut_spacing",),
        "string_gap_nut": ("string_y_nut", "strings_gauges",),
        "string_y_bridge": ("strings_gauges", "strings_course", "string_pair_bridge", "bridge_spread", "bridge_spacing",),
        "string_along_nut": ("string_y_nut", "fret_slant",),
        "string_spread_along_nut": ("string_along_nut",),
        "string_along_saddle": ("string_y_bridge", "saddle_slant",),
        "string_saddle_slant": ("scale_run_bass", "scale_run_treble", "scale_lead", "bridge_spread",),
        "string_scale_end_x": ("scale_run", "string_saddle_slant", "string_y_bridge",),
        "string_fraction": ("string_y_nut", "string_y_bridge", "fret_slant", "fret_position", "string_saddle_slant", "scale_run",),
        "string_y": ("string_y_nut", "string_y_bridge", "string_fraction",),
        "string_x": ("fret_position", "fret_slant", "string_y",),
        "string_splay": ("string_y_nut", "string_y_bridge", "string_scale_end_x", "string_x",),
        "string_error": ("string_fraction", "fret_fraction",),
        "string_margin_treble": ("string_y", "strings_gauges", "edge_y_treble",),
        "string_margin_bass": ("string_y", "strings_gauges", "edge_y_bass",),
    },
    "gramil.parts.template": {
        "template_notch": ("fret_position", "shop_pin_offset",),
        "template_nut_notch": ("board_nut_position", "saw_kerf", "shop_pin_offset",),
        "template_notch_width": ("shop_template_pin", "shop_pin_clearance",),
        "template_pin_reach": ("shop_template_pin",),
        "template_pin_first": ("board_nut_position", "shop_template_pin",),
        "template_pin_last": ("board_tail_position", "shop_template_pin",),
        "template_matches": ("shop_templates", "fret_position", "shop_template_pin", "limit_slot_position",),
    },
    "gramil.parts.tension": {
        "string_length": ("string_scale_end_x", "string_x", "string_y_bridge", "string_y_nut",),
        "string_speaking_length": ("string_length", "saddle_set_back", "intonation_nut_forward",),
        "string_core": ("strings_gauges", "strings_wound", "strings_cores", "limit_core_least", "limit_core_share",),
        "string_weight": ("strings_gauges", "strings_weights", "strings_wound", "string_core", "strings_plain", "strings_core", "strings_wrap",),
        "string_pull": ("string_weight", "string_speaking_length", "strings_frequency",),
        "string_pull_on_scale": ("string_weight", "string_length", "strings_frequency",),
        "string_pull_said": ("string_pull_total", "strings_wound", "strings_weights", "strings_frequency", "instrument_units",),
        "string_pull_total": ("string_pull",),
        "string_pull_ratio": ("string_pull",),
        "string_stress": ("string_pull", "string_core",),
        "string_stress_on_scale": ("string_pull_on_scale", "string_core",),
        "string_breaking": ("strings_wound", "string_core", "strings_plain", "strings_core",),
        "string_reserve": ("string_pull", "string_breaking",),
        "string_modulus": ("string_modulus_least", "string_modulus_most",),
        "string_modulus_least": ("strings_wound", "strings_plain", "strings_core", "string_stress_on_scale",),
        "string_modulus_most": ("strings_wound", "strings_plain", "strings_core", "string_stress_on_scale",),
        "string_elongation": ("string_pull", "string_speaking_length", "string_core", "string_modulus",),
        "string_stretch": ("strings_stretch", "string_modulus", "string_core", "string_pull_on_scale",),
        "string_stretch_least": ("strings_stretch", "string_modulus_least", "string_core", "string_pull_on_scale",),
        "string_stretch_most": ("strings_stretch", "string_modulus_most", "string_core", "string_pull_on_scale",),
        "string_stretch_length": ("strings_wound", "strings_plain", "strings_core", "string_length",),
        "string_bending_radius": ("strings_bending", "string_core",),
    },
    "gramil.parts.thickness": {
        "thickness_wedge": ("board_level_underside", "arch_fall_at_tail_end", "arch_fall_at_nut_end", "lean_wedge",),
        "thickness_wedge_angle": ("thickness_wedge", "board_length",),
        "thickness_at_crest": ("board_thickness", "thickness_wedge", "board_tail_position", "fret_position", "board_length",),
        "thickness_crest_at_slot_treble": ("board_thickness", "thickness_wedge", "board_tail_position", "core_x_treble", "board_length", "lean_at_slot_treble",),
        "thickness_crest_at_slot_bass": ("board_thickness", "thickness_wedge", "board_tail_position", "core_x_bass", "board_length", "lean_at_slot_bass",),
        "thickness_at_edge_treble": ("board_thickness", "thickness_wedge", "board_tail_position", "edge_x_treble", "board_length", "arch_fall_at_edge_treble", "lean_at_edge_treble",),
        "thickness_at_edge_bass": ("board_thickness", "thickness_wedge", "board_tail_position", "edge_x_bass", "board_length", "arch_fall_at_edge_bass", "lean_at_edge_bass",),
        "thickness_edge_spread": ("thickness_at_edge_treble", "thickness_at_edge_bass",),
        "thickness_before_levelling": ("board_thickness", "thickness_wedge",),
        "thickness_to_plane": ("thickness_before_levelling", "thickness_at_crest",),
    },
    "gramil.parts.top_across": {
        "across_station": ("body_bouts",),
        "across_area": ("body_shells", "across_station", "body_width",),
        "across_holders": ("brace_list", "across_station", "body_width",),
        "across_near": ("brace_list", "across_station", "body_width",),
        "across_height": ("across_holders",),
        "across_height_near": ("across_near",),
        "across_lean": ("across_holders",),
        "across_covered": ("across_near",),
        "across_unheld": ("brace_list", "across_covered", "across_lean", "across_height", "across_height_near", "body_width",),
    },
    "gramil.parts.top_graduated": {
        "graduated_edge": ("top_edge_thickness", "top_thickness",),
        "graduated_run": ("top_edge_thickness", "top_edge_run",),
        "graduated_band": ("graduated_run", "body_outlines",),
        "graduated_mean": ("top_thickness", "graduated_edge", "graduated_band",),
        "graduated_weight": ("timber_top", "graduated_mean", "top_thickness", "body_outlines", "opening_list",),
    },
    "gramil.parts.treble_side": {
        "treble_side_walls": ("body_sides",),
        "treble_side_length": ("treble_side_walls",),
        "treble_side_length_middle": ("treble_side_walls", "body_wall",),
        "treble_side_along": ("treble_side_walls",),
        "treble_side_upper": ("treble_side_walls", "treble_side_along",),
        "treble_side_lower": ("treble_side_walls", "treble_side_along",),
        "treble_side_stations": ("treble_side_walls", "bend_treble",),
        "treble_side_depths": ("treble_side_upper", "treble_side_lower",),
        "treble_side_extent": ("treble_side_upper", "treble_side_lower",),
    },
    "gramil.parts.whole": {
        "whole_plates": ("graduated_weight", "body_outlines", "body_back_thickness", "timber_back",),
        "whole_rim": ("body_perimeter", "body_depth_neck", "body_depth_tail", "body_wall", "timber_back",),
        "whole_inside": ("brace_list", "timber_braces", "body_blocks", "body_linings_volume",),
        "whole_shaft": ("section_neck", "fret_position", "back_bow_length", "timber_neck",),
        "whole_head": ("head_reach", "head_width", "head_thickness", "timber_neck",),
        "whole_heel": ("neck_heel_depth", "carve_heel_width", "carve_heel_length", "timber_neck",),
        "whole_board": ("section_board", "fret_position", "board_length", "timber_board",),
        "whole_bridge": ("bridge_length", "bridge_width_square", "bridge_thickness", "timber_bridge",),
        "whole_bought": ("strings_gauges", "head_tuners", "neck_rod", "neck_bars",),
        "whole_body": ("whole_plates", "whole_rim", "whole_inside", "whole_bridge",),
        "whole_neck": ("whole_shaft", "whole_head", "whole_heel", "whole_board",),
        "whole_weight": ("whole_body", "whole_neck", "whole_bought",),
    },
    "gramil.parts.wire": {
        "wire_line": ("edge_x_treble", "edge_y_treble", "edge_x_bass", "edge_y_bass",),
        "wire_cut": ("wire_line", "limit_wire_extra",),
        "wire_total": ("wire_cut", "slot_first", "limit_wire_spare",),
        "wire_nip_back": ("core_inset", "limit_nip_back",),
        "wire_bend_radius": ("arch_radius_at_fret", "limit_wire_bend_ratio",),
        "wire_fits": ("shop_saws", "wire_tang_thickness", "wire_bead_thickness", "limit_bead_share_most",),
    },
    "gramil.findings.on_air": {
        "finding_gluing_air": ("air_known", "air_unknown_because", "air_humidity", "limit_gluing_humidity_least", "limit_gluing_humidity_most",),
        "finding_board_moisture": ("air_known", "air_unknown_because", "air_pieces", "air_pieces_unknown", "air_temperature", "blank_choice", "limit_gluing_humidity_least", "limit_gluing_humidity_most",),
        "finding_sprout": ("sprout_least", "sprout_most", "limit_sprout", "board_wood",),
        "finding_binding_step": ("swell_step_dry", "core_inset", "limit_binding_step", "board_wood",),
        "finding_dome": ("dome_rise_dry", "dome_curvature_dry", "dome_curvature_dry_least", "top_movement_radial", "top_modulus_across", "top_brace_modulus", "top_wood", "top_brace_wood", "across_unheld",),
    },
    "gramil.findings.on_bevel": {
        "finding_bevel_glued": ("bevelled_blocks", "limit_plate_glued", "limit_plate_glued_least",),
        "finding_bevel_under": ("bevelled_blocks", "limit_lining_under",),
        "finding_side_under_bevel": ("bevel_list", "limit_side_under_bevel",),
        "finding_bevel_slope": ("bevel_list", "limit_bevel_steepest",),
        "finding_braces_at_bevel": ("bevelled_braces",),
        "finding_hole_at_bevel": ("bevelled_holes", "limit_opening_room",),
        "finding_port_at_bevel": ("bevelled_ports", "limit_port_room",),
    },
    "gramil.findings.on_board": {
        "finding_edge_uneven": ("thickness_edge_spread", "core_inset", "limit_edge_uneven",),
        "finding_ledge": ("shop_cutters", "ledge_choice", "core_inset", "limit_binding_proud_least", "limit_binding_proud_most",),
        "finding_blank": ("shop_blanks", "shop_kept", "board_wood", "blank_choice", "blank_width",),
        "finding_blocks": ("shop_blocks", "block_at_nut", "block_at_middle", "block_at_end", "limit_block_misfit",),
        "finding_index_template": ("template_matches", "fret_angle",),
        "finding_levelling": ("thickness_wedge_angle", "board_level_underside",),
        "finding_shop": ("shop_is_default", "shop_name",),
    },
    "gramil.findings.on_body": {
        "finding_body": ("body_perimeter",),
        "finding_body_length": ("body_length", "top_length",),
        "finding_bend": ("body_bouts", "bend_treble", "bend_bass", "body_bend_ratio", "limit_bend_ratio", "limit_bend_ratio_least",),
        "finding_bridge_in_bout": ("body_width_share", "limit_bridge_width_share",),
        "finding_board_over_hole": ("soundhole_from_board",),
        "finding_heel": ("neck_heel_depth", "body_depth_neck", "graduated_edge", "body_blocks", "foot_there",),
        "finding_foot_heel": ("foot_there", "foot_heel_over", "body_blocks", "limit_tolerance_outline",),
        "finding_foot_slots": ("foot_there", "foot_slot_depth", "foot_slot_depth_at_cap", "foot_behind_slots", "foot_slot_width",),
        "finding_foot_toe": ("foot_there", "foot_toe_room", "carve_foot_toe",),
    },
    "gramil.findings.on_braces": {
        "finding_brace_outside": ("room_outside", "brace_list",),
        "finding_braces_meet": ("brace_unmet", "brace_list",),
        "finding_brace_low": ("brace_low",),
        "finding_plate_outside": ("plate_outside", "plate_back",),
        "finding_wings": ("room_bridge_to_legs", "limit_wing_off_leg",),
        "finding_plate_under_pins": ("room_pins_in_plate", "limit_plate_under_pin",),
        "finding_plate_to_legs": ("room_plate_to_legs", "limit_plate_to_leg",),
        "finding_plate_to_braces": ("room_plate_to_braces", "limit_brace_room",),
        "finding_crossing_room": ("room_crossing_to_hole", "limit_crossing_room",),
        "finding_braces_to_hole": ("room_braces_to_hole", "limit_brace_to_hole",),
        "finding_pins_clear": ("room_pins_to_braces", "limit_pin_room",),
        "finding_braces_apart": ("room_between_braces", "room_nearest_braces", "limit_brace_room",),
        "finding_braces_to_blocks": ("room_braces_to_blocks", "limit_brace_room",),
        "finding_brace_stock": ("stick_wanting", "stick_list",),
    },
    "gramil.findings.on_bridge": {
        "finding_break_points": ("saddle_to_face", "limit_saddle_edge",),
        "finding_saddle_in_slot": ("saddle_showing", "limit_saddle_shows", "instrument_units",),
        "finding_under_saddle_slot": ("bridge_under_slot", "limit_under_saddle_slot",),
        "finding_pins": ("bridge_hold", "bridge_hold_spacing", "bridge_hold_wall", "limit_pin_spacing", "limit_pin_spacing_least", "limit_pin_to_saddle",),
        "finding_rows_of_pins": ("bridge_hold_row", "bridge_hold_between", "bridge_hold_clear", "bridge_hold_back", "bridge_pin_diameter", "limit_pin_spacing_least", "limit_string_to_pin",),
        "finding_break_angle": ("bridge_break_angle", "limit_break_angle_saddle", "limit_break_angle_saddle_least",),
        "finding_bridge_holds": ("bridge_hold_y", "saddle_reach", "bridge_length",),
    },
    "gramil.findings.on_carve": {
        "finding_rod_over": ("rod_over", "limit_over_rod",),
        "finding_rod_corner": ("rod_corner", "scale_join", "limit_beside_rod",),
        "finding_rod_under_head": ("rod_under_head", "limit_beside_rod",),
        "finding_rod_blind_end": ("rod_blind_left", "limit_rod_blind", "carve_rod_access", "foot_there",),
        "finding_rod_reach": ("rod_unreached", "limit_rod_short",),
        "finding_scarf": ("plank_scarfed", "head_scarf_length", "plank_head_along", "carve_scarf",),
        "finding_neck_plank": ("plank_over", "limit_plank_over",),
        "finding_neck_stock": ("plank_choice", "carve_wood", "shop_kept",),
        "finding_carve_gauged": ("carve_gauged", "limit_carve_stations",),
        "finding_heel_carved": ("neck_heel_depth", "carve_deepest",),
        "finding_tuner_edge": ("head_hole_to_edge", "limit_hole_edge",),
        "finding_tuners_apart": ("head_holes_apart", "limit_holes_apart",),
        "finding_strings_in_slots": ("head_slot_room", "limit_slot_room", "head_tuners",),
        "finding_strings_past_posts": ("head_post_clear", "limit_string_to_post", "head_tuners",),
    },
    "gramil.findings.on_cutaway": {
        "finding_tight_bend": ("bend_treble", "bend_tightest_treble", "limit_bend_radius",),
        "finding_tight_bend_bass": ("bend_bass", "bend_tightest_bass", "limit_bend_radius",),
        "finding_beside_board": ("access_beside_board",),
        "finding_block_beside_cutaway": ("body_blocks",),
        "finding_frets_reached": ("access_depth", "access_fret", "scale_frets",),
    },
    "gramil.findings.on_edges": {
        "finding_behind_channel": ("channel_list", "limit_behind_channel",),
        "finding_lining_under": ("channel_list", "limit_lining_under",),
        "finding_plate_glued": ("channel_list", "limit_plate_glued", "limit_plate_glued_least",),
        "finding_under_purfling": ("channel_list", "limit_under_purfling",),
        "finding_binding_cover": ("channel_list", "limit_binding_cover",),
        "finding_side_between": ("channel_list", "channel_side_left", "limit_side_between",),
        "finding_binding_bend": ("strip_list", "limit_bend_ratio", "limit_bend_ratio_least",),
        "finding_channel_lean": ("channel_tilts", "limit_channel_lean",),
        "finding_channel_cutters": ("channel_cuts", "shop_cutters", "limit_binding_proud_least", "limit_binding_proud_most",),
    },
    "gramil.findings.on_heights": {
        "finding_action_bass": ("heights_action_bass", "limit_action_bass_least", "limit_action_bass_most",),
        "finding_action_treble": ("heights_action_treble", "limit_action_treble_least", "limit_action_treble_most",),
        "finding_string_on_crown": ("height_over_crown",),
        "finding_nut_slots": ("nut_slot_over_first", "limit_nut_first_least", "limit_nut_first_most", "action_nut_fret", "scale_zero_fret",),
        "finding_relief_wanted": ("heights_relief", "limit_relief_least", "limit_relief_most",),
        "finding_body_rise": ("heights_body_rise", "limit_body_rise_least", "limit_body_rise_most",),
        "finding_crown_left": ("crown_height", "limit_crown_least",),
        "finding_saddle_exposed": ("neck_set_exposed_mean", "limit_exposed_least", "limit_exposed_most",),
        "finding_saddle_low": ("neck_set_exposed", "limit_exposed_stop_least",),
        "finding_saddle_high": ("neck_set_exposed", "limit_exposed_stop_most",),
        "finding_over_top": ("neck_set_over_top_mean", "limit_over_top_least", "limit_over_top_most",),
    },
    "gramil.findings.on_intonation": {
        "finding_intonation": ("intonation_rms_after", "intonation_cents_after", "intonation_weights", "limit_cents_rms", "limit_cents_worst",),
        "finding_nut": ("intonation_rms_best", "intonation_rms_all_after", "limit_nut_gain",),
        "finding_stiffness_range": ("intonation_rms_softest", "intonation_rms_stiffest", "limit_cents_rms",),
    },
    "gramil.findings.on_neck": {
        "finding_neck_angle": ("neck_angle_target", "limit_neck_angle_least", "limit_neck_angle_most",),
        "finding_neck_reset": ("neck_straightedge", "neck_set_straightedge", "heel_wedge_to_take", "limit_heel_wedge",),
        "finding_tongue": ("neck_set_tongue_gap", "limit_tongue_gap",),
        "finding_under_channel": ("neck_section_under_channel", "scale_join", "neck_section_channel_depth", "limit_under_rod", "neck_rod",),
        "finding_wood_stiffness": ("board_modulus", "board_modulus_known", "neck_modulus", "neck_modulus_known",),
        "finding_relief_too_much": ("relief_for_rod_least", "relief_for_rod_most", "neck_rod", "limit_rod_reach", "limit_relief_most", "string_pull_total",),
        "finding_relief_too_little": ("relief_predicted_least", "relief_predicted_most", "neck_rod", "limit_rod_reach", "limit_relief_least", "string_pull_total",),
        "finding_break_at_nut": ("head_break_angle", "limit_break_angle_least", "limit_break_angle_most",),
        "finding_sideways_at_nut": ("head_sideways_bend", "limit_sideways_bend",),
    },
    "gramil.findings.on_old": {
        "finding_old_slots": ("refret_chosen", "repair_refret", "limit_fit_loosest", "limit_fit_tightest",),
        "finding_old_bite": ("refret_chosen", "repair_refret", "limit_bead_bite_caution", "limit_bead_bite_stop",),
        "finding_old_room": ("refret_chosen", "repair_refret", "limit_clearance_least",),
        "finding_old_left": ("found_left_least", "limit_under_slot", "limit_under_slot_least",),
        "finding_old_bow": ("refret_chosen_bow", "repair_refret", "limit_back_bow",),
        "finding_old_crowns": ("found_crown_least", "repair_refret", "limit_crown_least",),
        "finding_old_saddle": ("found_exposed_bass", "found_exposed_treble", "repair_reset", "limit_exposed_stop_least",),
        "finding_old_action": ("found_action_bass", "found_action_treble", "heights_action_bass",),
        "finding_reset_wedge": ("reset_wedge", "repair_reset", "limit_heel_wedge",),
        "finding_reset_tongue": ("reset_tongue_left", "repair_reset", "limit_under_slot",),
        "finding_reset_saddle": ("reset_exposed", "repair_reset", "limit_exposed_stop_least", "limit_exposed_stop_most",),
        "finding_moved": ("moved_treble", "moved_bass", "repair_bridge", "limit_saddle_place",),
    },
    "gramil.findings.on_openings": {
        "finding_opening_braces": ("opening_to_braces", "limit_brace_to_hole",),
        "finding_opening_linings": ("opening_to_linings", "limit_opening_room",),
        "finding_opening_blocks": ("opening_to_blocks", "limit_opening_room",),
        "finding_opening_board": ("opening_to_board", "limit_opening_room",),
        "finding_opening_plate": ("opening_to_plate", "limit_opening_room",),
        "finding_openings_apart": ("opening_to_others", "limit_opening_room",),
        "finding_ring_edge": ("opening_to_edge", "limit_opening_room",),
        "finding_shaped_edge": ("opening_list", "opening_shaped", "opening_cutter_radius",),
        "finding_ring_channel": ("rosette_rings", "opening_shaped", "opening_cutter",),
        "finding_port_linings": ("port_to_linings", "limit_port_room",),
        "finding_port_blocks": ("port_to_blocks", "limit_port_room",),
        "finding_ports_apart": ("port_to_others", "limit_port_room",),
        "finding_port_bend": ("port_bends", "limit_port_bend",),
    },
    "gramil.findings.on_permits": {
        "finding_permits": ("stuff_list",),
    },
    "gramil.findings.on_slots": {
        "finding_left_under_slot": ("slot_left_least", "slot_first", "limit_under_slot", "limit_under_slot_least",),
        "finding_slot_depth": ("slot_kerf_at_end", "slot_depth_at_end", "slot_first", "slots_bottom", "slots_cut", "slot_need", "wire_tang_depth", "limit_tolerance_height",),
        "finding_pilot": ("slot_kerf_at_end", "slot_first", "slots_bottom", "slots_cut", "limit_pilot_least",),
        "finding_clearance": ("slots_clearance", "limit_clearance_least", "limit_clearance_most",),
        "finding_crest_loss": ("slots_crest_loss", "slots_cut", "limit_crest_loss_least", "limit_crest_loss_most",),
        "finding_saw": ("shop_saws", "saw_main", "slots_saw", "wire_tang_thickness",),
        "finding_deepening_saw": ("saw_deepening", "slots_bottom", "slots_cut", "wire_tang_thickness",),
        "finding_kerfs_agree": ("saw_kerf_over", "limit_fit_loosest",),
    },
    "gramil.findings.on_strings": {
        "finding_edge_margin": ("string_margin_treble", "string_margin_bass", "limit_edge_margin",),
        "finding_courses": ("strings_count", "strings_course", "strings_single", "limit_single_strings",),
        "finding_pairs": ("string_pair_nut", "string_pair_bridge", "limit_pair_least", "limit_pair_most",),
        "finding_string_gap": ("string_gap_nut",),
        "finding_hump": ("arch_hump", "limit_string_hump",),
        "finding_inner_strings": ("string_error", "limit_string_error_cents",),
    },
    "gramil.findings.on_tension": {
        "finding_breaking": ("string_reserve", "limit_breaking_reserve", "limit_breaking_reserve_least",),
        "finding_slack": ("string_pull", "limit_pull_least",),
        "finding_uneven": ("string_pull_ratio", "limit_pull_uneven",),
        "finding_estimates": ("string_weight", "strings_wound", "strings_weights", "strings_cores",),
        "finding_torque": ("bridge_torque", "bridge_torque_least", "bridge_torque_most",),
    },
    "gramil.findings.on_wire": {
        "finding_wire_fit": ("wire_fits", "saw_main", "limit_fit_loosest", "limit_fit_tightest",),
        "finding_bead_bite": ("wire_fits", "saw_main", "limit_bead_bite_caution", "limit_bead_bite_stop",),
        "finding_back_bow": ("back_bow_least", "back_bow_most", "limit_back_bow",),
        "finding_wire_on_hand": ("wire_total", "wire_on_hand",),
    },
    "gramil.setups.arching": {
        "arching_radius_nut": ("arch_surface",),
        "arching_radius_middle": ("arch_radius_at_fret", "station_middle_fret",),
        "arching_radius_end": ("arch_surface", "board_tail_position",),
        "arching_fall_middle": ("arch_fall_at_edge_treble", "arch_fall_at_edge_bass", "station_middle_fret",),
        "arching_edge_middle": ("thickness_before_levelling", "arching_fall_middle",),
    },
    "gramil.setups.bevelling": {
        "setup_bevel_block": ("bevelled_blocks", "bevelled_braces", "bevel_list",),
        "setup_bevel": ("bevel_list", "bevel_marks", "bevelled_bindings", "bevel_veneers",),
        "setup_bevel_veneer": ("bevel_veneers", "bevel_list",),
    },
    "gramil.setups.board_binding": {
        "setup_board_binding": ("core_inset", "binding_purfling", "binding_tail", "binding_material", "station_middle_fret",),
    },
    "gramil.setups.body_binding": {
        "setup_flush": ("body_bouts", "channel_flush_cutter", "downhill_treble",),
        "setup_binding_bend": ("strip_list", "side_stations", "treble_side_stations", "bend_treble",),
        "setup_channels": ("channel_edges", "channel_cuts", "channel_tilts", "downhill_treble", "bevelled_bindings",),
        "setup_body_binding": ("channel_edges", "strip_list", "bend_treble", "bevelled_bindings",),
    },
    "gramil.setups.body_work": {
        "setup_mould": ("body_bouts", "bend_treble",),
        "setup_sides": ("side_stations", "treble_side_stations", "bend_treble", "bend_thin_to", "body_wall", "foot_there",),
        "setup_brace_stock": ("stick_list", "stick_billets", "stick_wanting", "brace_crossings",),
        "setup_brace_top": ("brace_list", "brace_crossings",),
        "setup_bridge_plate": ("plate_shapes", "brace_legs", "plate_slant", "top_radius",),
        "setup_brace_back": ("brace_list", "brace_crossings",),
    },
    "gramil.setups.bridging": {
        "setup_bridge": ("station_fanned", "foot_there",),
        "setup_saddle_slot": ("bridge_hold", "bridge_hold_row",),
        "setup_saddle": ("strings_count",),
        "setup_strings": ("strings_count", "strings_course", "strings_plain",),
        "setup_in_tune": ("strings_count", "strings_course", "action_fret",),
    },
    "gramil.setups.building_on": {
        "setup_heel_slots": ("foot_there", "carve_foot_toe", "foot_slot_depth_at_cap", "foot_slot_bow", "limit_tolerance_height",),
        "setup_build_board": ("foot_there", "neck_set_drop", "top_radius", "body_bouts",),
        "setup_built_on": ("foot_there", "neck_set_drop", "body_bouts",),
    },
    "gramil.setups.edging": {
        "setup_taper": ("jig_taper", "taper_edge_nut", "taper_edge_tail",),
        "setup_ledge": ("core_inset", "ledge_choice",),
    },
    "gramil.setups.fretting": {
        "setup_wire": ("wire_fits", "saw_main", "slot_first", "scale_frets", "wire_nip_back", "board_curvature_nut",),
        "setup_markers": ("markers_frets", "markers_double", "markers_face", "neck_rod", "core_inset",),
        "setup_caliper": ("scale_frets", "station_fanned", "instrument_units",),
    },
    "gramil.setups.jig": {
        "jig_taper": ("shop_jigs",),
        "jig_slots": ("shop_jigs",),
    },
    "gramil.setups.neck_carving": {
        "setup_neck_blank": ("plank_choice", "plank_pieces",),
        "setup_neck_scarf": ("plank_scarfed", "carve_scarf", "carve_heel", "plank_heel_blocks", "plank_toe",),
        "setup_neck_rod": ("neck_rod", "carve_rod_access",),
        "setup_neck_head": ("head_tuners", "strings_count", "station_fanned",),
        "setup_neck_carve": ("carve_stations", "carve_facets",),
    },
    "gramil.setups.neck_joint": {
        "setup_neck_joint": ("foot_there",),
    },
    "gramil.setups.neck_set": {
        "setup_neck_set": ("neck_straightedge", "neck_set_straightedge", "neck_rod", "foot_there",),
        "setup_nut_slots": ("scale_zero_fret", "strings_count",),
        "setup_relief": ("neck_rod", "action_fret", "strings_count", "relief_predicted_least", "board_modulus_known", "neck_modulus_known",),
    },
    "gramil.setups.opening_work": {
        "setup_openings": ("opening_main", "opening_further", "opening_shaped", "rosette_rings", "opening_cutter",),
        "setup_ports": ("port_list",),
    },
    "gramil.setups.owner": {
        "setup_owner_air": ("sprout_most", "core_inset", "scale_frets", "dome_curvature_dry", "dome_curvature_dry_least", "across_unheld", "stuff_list", "swell_moistures", "top_radius",),
    },
    "gramil.setups.preparing": {
        "setup_blank": ("blank_choice", "lean_corner_tail_treble",),
        "setup_layout": ("station_middle_fret", "scale_frets", "station_fanned", "board_nut_position",),
        "setup_template": ("station_fanned", "card_notches_serve", "card_nut_notch_stands", "template_matches", "station_middle_fret", "jig_slots",),
    },
    "gramil.setups.repairing": {
        "setup_as_found": ("repair_described", "scale_frets",),
        "setup_old_slots": ("repair_described", "repair_refret", "scale_frets",),
        "setup_which_wire": ("repair_described", "repair_refret", "shop_wires", "found_slot_width_least", "found_slot_depth_least", "found_crown_mean", "back_bow_row",),
        "setup_refret": ("repair_described", "repair_refret", "refret_room",),
    },
    "gramil.setups.resetting": {
        "setup_reset": ("repair_described", "repair_reset", "strings_count", "reset_tongue",),
        "setup_bridge_again": ("repair_described", "repair_bridge", "moved_slots_overlap", "found_saddle_treble", "found_saddle_bass",),
        "setup_handed_back": ("repair_described",),
    },
    "gramil.setups.slotting": {
        "setup_slot": ("saw_main", "slots_bottom", "slots_cut", "stop_thinnest_fret", "station_middle_fret", "station_fanned", "board_curvature_nut",),
        "setup_deepen": ("slots_bottom", "slots_cut", "saw_deepening", "stop_deepest_fret", "slot_kerf_at_end", "slot_to_deepen", "limit_tolerance_height",),
    },
    "gramil.setups.station": {
        "station_middle_fret": ("fret_position",),
        "station_fanned": ("scale_run_bass", "scale_run_treble",),
        "station_width_at_nut_end": ("nut_width", "board_width_at_tail", "board_nut_position", "board_tail_position",),
    },
    "gramil.setups.stop": {
        "stop_stock": ("blank_thickness", "thickness_before_levelling", "slots_cut",),
        "stop_over_cradle": ("shop_template_thickness", "stop_stock", "slot_depth_setting",),
        "stop_thinnest_fret": ("slot_left_least", "slot_first",),
        "stop_deepest_fret": ("slot_to_deepen", "slot_first",),
    },
    "gramil.setups.surfacing": {
        "setup_arch": ("board_curvature_nut", "board_curvature_end", "block_at_nut",),
        "setup_level": ("board_level_underside", "board_curvature_nut", "station_middle_fret", "scale_frets",),
    },
    "gramil.setups.taper": {
        "taper_half_width_nut": ("station_width_at_nut_end",),
        "taper_half_width_tail": ("board_width_at_tail",),
        "taper_centre_nut": ("jig_taper", "taper_half_width_nut", "board_half_taper_angle",),
        "taper_centre_tail": ("jig_taper", "taper_half_width_tail", "board_half_taper_angle",),
        "taper_corner_nut": ("board_outline", "feed_other_edge",),
        "taper_corner_tail": ("board_outline", "feed_other_edge",),
        "taper_edge_nut": ("jig_taper", "nut_width", "board_growth", "taper_corner_nut", "board_half_taper_angle",),
        "taper_edge_tail": ("jig_taper", "nut_width", "board_growth", "taper_corner_tail", "board_half_taper_angle",),
        "feed_agreeing_edge": ("instrument_handed",),
        "feed_other_edge": ("feed_agreeing_edge",),
    },
    "gramil.drawings.bevels": {
        "piece_bevels_on_face": ("bevel_laid",),
        "piece_bevels_on_back": ("bevel_laid",),
        "piece_bevels_on_side": ("bevel_laid", "piece_bass_turned",),
        "drawing_bevel_arm": ("instrument_name", "instrument_handed", "bevel_laid", "bevel_patterns", "piece_laser",),
        "drawing_bevel_rib": ("instrument_name", "instrument_handed", "bevel_laid", "bevel_patterns", "piece_laser",),
    },
    "gramil.drawings.board": {
        "piece_board": ("piece_outline", "piece_slots", "piece_zero_line", "piece_strings",),
        "piece_furniture": ("piece_markers", "piece_side_dots", "piece_pins",),
        "piece_words": ("piece_head_words", "piece_fret_numbers", "piece_side_words", "piece_sizes", "piece_tail_size",),
        "drawing_board": ("instrument_name", "instrument_handed", "piece_board", "piece_furniture", "piece_words",),
    },
    "gramil.drawings.body": {
        "piece_body_outline": ("body_outlines",),
        "piece_binding_lines": ("channel_lines", "bevel_laid",),
        "piece_bridge_on_body": ("body_outlines", "brace_bridge", "brace_pins", "bridge_pin_diameter", "piece_saddle_on_body",),
        "piece_saddle_on_body": ("saddle_end_treble", "saddle_end_bass", "saddle_reach", "body_edge",),
        "piece_braces_hidden": ("brace_list", "plate_shapes",),
        "piece_body_blocks": ("body_outlines", "body_blocks",),
        "piece_body_sizes": ("body_bouts", "body_length", "body_reach_bass",),
        "piece_face_plan": ("piece_body_outline", "piece_binding_lines", "piece_openings", "piece_bridge_on_body", "piece_braces_hidden", "piece_body_blocks", "piece_bevels_on_face",),
        "drawing_mould": ("instrument_name", "instrument_handed", "body_outlines", "body_mould_length", "body_mould_half_width", "body_mould_wall", "piece_router",),
    },
    "gramil.drawings.bracing": {
        "piece_plan_top": ("piece_body_outline", "piece_body_blocks", "piece_openings", "brace_list", "plate_shapes", "piece_bevels_on_face",),
        "piece_plan_back": ("piece_body_outline", "piece_body_blocks", "brace_list", "piece_bevels_on_back",),
        "piece_face_numbers": ("brace_list",),
        "piece_list_top": ("brace_list", "body_length", "body_width",),
        "piece_list_back": ("brace_list", "body_length", "body_width",),
        "drawing_top_inside": ("piece_plan_top", "piece_list_top", "instrument_name", "instrument_handed",),
        "drawing_back_inside": ("piece_plan_back", "piece_list_back", "instrument_name", "instrument_handed",),
        "drawing_braces": ("instrument_name", "piece_laser", "brace_list", "brace_crossings",),
    },
    "gramil.drawings.bridge": {
        "piece_bridge": ("bridge_outline", "bridge_front_edge", "bridge_width",),
        "piece_saddle_slot": ("saddle_position", "saddle_slant", "saddle_reach", "saddle_thickness",),
        "piece_break_points": ("saddle_break_x", "string_y_bridge",),
        "piece_scale_ends": ("string_scale_end_x", "string_y_bridge",),
        "piece_hold": ("bridge_hold", "bridge_hold_x", "bridge_hold_y", "bridge_pin_diameter", "bridge_outline",),
        "piece_bridge_strings": ("bridge_outline", "saddle_break_x", "string_y_bridge", "bridge_hold_x", "bridge_hold_y",),
        "piece_bridge_lines": ("piece_bridge", "piece_saddle_slot", "piece_scale_ends", "piece_hold",),
        "piece_bridge_sizes": ("bridge_outline",),
        "piece_bridge_words": ("bridge_outline", "instrument_name", "bridge_hold", "bridge_hold_row",),
        "piece_set_backs": ("bridge_outline", "bridge_hold_y",),
        "drawing_bridge": ("instrument_name", "instrument_handed", "piece_router", "piece_bridge_lines", "piece_bridge_run", "piece_bridge_figures", "piece_bridge_words",),
        "piece_bridge_run": ("piece_bridge_strings", "piece_break_points",),
        "piece_bridge_figures": ("piece_bridge_sizes", "piece_set_backs",),
    },
    "gramil.drawings.carve": {
        "piece_gauge_cards": ("carve_stations", "instrument_name",),
        "drawing_neck_gauges": ("instrument_name", "piece_laser", "piece_gauge_cards",),
        "piece_facets": ("carve_stations", "carve_lines", "carve_facets",),
        "drawing_neck_facets": ("instrument_name", "piece_facets",),
        "piece_flats_scale": ("carve_stations",),
        "drawing_setup_neck_carve": ("instrument_name", "piece_setup_flats", "piece_flats_scale",),
        "piece_setup_flats": ("carve_stations", "carve_lines", "carve_facets", "piece_flats_scale",),
    },
    "gramil.drawings.face_plan": {
        "piece_body_places": ("body_outlines", "body_bouts", "soundhole_centre", "body_saddle", "body_reach_treble", "opening_further",),
        "piece_face_words": ("body_reach_treble", "body_bouts", "opening_further",),
        "piece_title_block": ("instrument_name", "instrument_handed", "body_length", "body_reach", "opening_main",),
        "piece_face_told": ("body_length", "body_reach",),
        "drawing_face_plan": ("piece_face_lines", "piece_face_beside", "piece_face_told", "instrument_name", "instrument_handed",),
        "piece_face_lines": ("piece_face_plan", "piece_face_sizes", "piece_face_numbers",),
        "piece_face_sizes": ("piece_body_sizes", "piece_body_places", "piece_face_words", "piece_openings_sizes",),
        "piece_face_beside": ("piece_list_top", "piece_title_block",),
    },
    "gramil.drawings.foot": {
        "piece_foot_side": ("foot_there", "foot_step", "foot_height", "foot_length", "carve_foot_toe", "carve_foot_toe_height", "neck_heel_depth", "neck_angle_face",),
        "piece_slots_on_face": ("foot_there", "foot_cheek", "foot_slot_bottom", "foot_slot_inner", "foot_slot_outer", "foot_slot_width", "foot_slot_angle",),
        "piece_foot_on_face": ("foot_there", "carve_form", "body_edge", "foot_cheek", "foot_length", "body_neck_block_width", "carve_foot_toe",),
        "piece_side_place": ("foot_length", "carve_foot_toe", "neck_heel_depth", "carve_heel_length",),
        "piece_slots_from_side": ("piece_foot_side", "carve_heel_curve", "body_edge", "foot_slot_outer", "foot_slot_width", "foot_step", "foot_height", "neck_heel_depth", "neck_angle_face", "piece_side_place",),
        "piece_slot_figures": ("foot_there", "foot_cheek", "foot_slot_bottom", "foot_length",),
        "piece_foot_figures": ("foot_there", "piece_side_place", "foot_length", "foot_step", "foot_height", "carve_foot_toe", "carve_foot_toe_height", "neck_heel_depth", "carve_heel_length",),
        "drawing_heel_slots": ("instrument_name", "piece_foot_on_face", "piece_slots_on_face", "piece_slots_from_side", "piece_slot_figures", "piece_foot_figures",),
        "piece_build_board": ("foot_there", "board_nut_position", "body_edge", "neck_set_drop", "body_saddle", "neck_set_dome_rise",),
        "piece_build_board_figures": ("foot_there", "board_nut_position", "body_edge", "neck_set_drop", "body_saddle", "neck_set_dome_rise",),
        "drawing_build_board": ("instrument_name", "piece_build_board", "piece_build_board_figures",),
    },
    "gramil.drawings.gauges": {
        "piece_arch_cards": ("card_arches", "instrument_name",),
        "piece_depth_cards": ("card_depths", "card_arches",),
        "piece_gap_cards": ("card_gaps", "card_arches",),
        "drawing_gauges": ("instrument_name", "piece_laser", "piece_arch_cards", "piece_depth_cards", "piece_gap_cards",),
    },
    "gramil.drawings.guitar": {
        "piece_plan_body": ("piece_face_plan", "body_edge", "piece_whole_body", "piece_whole_bridge",),
        "piece_plan_head": ("head_outline", "piece_whole_head", "board_nut_position", "piece_tuners",),
        "piece_plan_sizes": ("scale_run", "back_bow_length", "bridge_front_edge", "body_outlines", "body_edge",),
        "piece_plan_face": ("piece_plan_body", "piece_plan_head", "piece_whole_board", "piece_whole_strings",),
        "drawing_plan_face": ("instrument_name", "instrument_handed", "piece_plan_face", "piece_plan_sizes",),
        "piece_plan_turned": ("back_bow_length", "neck_angle_face", "body_beyond_join",),
        "piece_plan_rims": ("body_sides", "channel_edges", "piece_plan_turned",),
        "piece_plan_board": ("board_nut_position", "board_tail_position", "fret_position", "thickness_at_crest", "head_nut_thickness",),
        "piece_plan_strings": ("height_at_zero", "height_at_saddle", "saddle_break_x", "thickness_at_crest",),
        "piece_plan_bridge": ("bridge_front_edge", "bridge_width", "bridge_thickness", "piece_plan_turned", "neck_set_dome_rise",),
        "piece_plan_side_sizes": ("back_bow_length", "neck_heel_depth", "body_sides",),
        "piece_plan_neck_side": ("piece_carved", "piece_plan_board", "piece_plan_strings", "heel_wedge",),
        "drawing_plan_side": ("instrument_name", "piece_plan_neck_side", "piece_plan_rims", "piece_plan_bridge", "piece_plan_side_sizes",),
        "piece_cuts": ("carve_stations", "arch_surface", "neck_rod", "neck_rod_width", "neck_rod_depth", "lean_at_edge_treble", "edge_y_treble", "instrument_handed",),
        "piece_cut_strings": ("carve_stations", "string_y", "height_at_zero", "height_slope", "strings_gauges", "instrument_handed",),
        "drawing_plan_sections": ("instrument_name", "piece_cuts", "piece_cut_strings",),
    },
    "gramil.drawings.head": {
        "piece_head_edge": ("head_outline", "head_reach", "head_width", "nut_width", "head_nut_thickness", "fret_slant",),
        "piece_tuners": ("head_posts_x", "head_posts_y", "head_hole", "head_slots", "head_width", "head_outline",),
        "piece_head_strings": ("string_y_nut", "head_posts_x", "head_posts_y", "fret_slant",),
        "piece_head_lines": ("piece_head_edge", "piece_tuners", "piece_head_strings",),
        "piece_tuner_sizes": ("head_posts_x", "head_width", "head_reach",),
        "piece_tuner_list": ("head_posts_y",),
        "piece_slot_sizes": ("head_slots", "head_posts_y",),
        "drawing_head": ("instrument_name", "instrument_handed", "piece_router", "piece_head_lines", "piece_tuner_sizes", "piece_tuner_list", "piece_slot_sizes",),
        "drawing_setup_neck_head": ("instrument_name", "instrument_handed", "piece_head_edge", "piece_tuners", "head_reach",),
    },
    "gramil.drawings.heights": {
        "piece_turned": ("back_bow_length", "neck_set_board_at_join", "neck_angle_target",),
        "piece_set_board": ("piece_turned", "board_nut_position", "board_tail_position", "board_thickness", "thickness_wedge",),
        "piece_set_frets": ("piece_turned", "fret_position", "crown_height", "slot_first",),
        "piece_set_body": ("back_bow_length", "neck_set_run_mean", "neck_set_dome_rise", "top_length",),
        "piece_set_bridge": ("piece_turned", "neck_set_run_mean", "neck_set_height_mean", "neck_set_dome_rise", "neck_set_bridge_top",),
        "piece_set_lines": ("piece_turned", "crown_height", "neck_set_run_mean", "neck_set_height_mean", "nut_slot_over_crest",),
        "piece_set_figures": ("piece_turned", "crown_height", "neck_set_run_mean", "neck_set_bridge_top", "neck_set_dome_rise", "neck_set_height_mean",),
        "drawing_neck_set": ("instrument_name", "piece_set_board", "piece_set_frets", "piece_set_body", "piece_set_bridge", "piece_set_lines", "piece_set_figures",),
        "piece_strung": ("string_x", "crown_top", "height_at_zero", "height_saddle_x", "height_at_saddle",),
        "piece_strung_tall": ("piece_strung",),
        "piece_strung_lines": ("piece_strung", "piece_strung_drop", "piece_strung_tall", "crown_height", "slot_first", "scale_join",),
        "piece_strung_drop": ("piece_strung", "piece_strung_tall",),
        "piece_strung_figures": ("piece_strung", "piece_strung_drop", "piece_strung_tall", "action_fret", "scale_join",),
        "drawing_heights": ("instrument_name", "piece_strung", "piece_strung_lines", "piece_strung_figures", "piece_strung_drop", "piece_strung_tall",),
    },
    "gramil.drawings.index_template": {
        "piece_rail": ("card_rail_head", "card_rail_tail", "card_rail_front", "card_rail_back",),
        "piece_notches": ("template_notch", "slot_first", "template_nut_notch", "card_nut_notch_stands", "template_notch_width", "card_notch_depth",),
        "piece_rail_cut": ("piece_rail", "piece_notches",),
        "piece_rail_holes": ("template_pin_first", "template_pin_last", "shop_template_pin", "piece_rail",),
        "piece_rail_board": ("board_outline", "nut_width", "template_nut_notch", "card_nut_notch_stands", "piece_rail",),
        "piece_rail_numbers": ("template_notch", "piece_notches", "slot_first", "piece_rail",),
        "piece_rail_proof": ("card_proof_notch", "template_pin_first", "template_notch", "piece_rail",),
        "piece_rail_words": ("instrument_name", "saw_main", "instrument_handed", "piece_rail", "nut_width",),
        "piece_template": ("piece_rail_cut", "piece_rail_holes", "piece_rail_board", "piece_rail_numbers",),
        "piece_lines_instead": ("piece_outline", "piece_slots", "piece_pins", "piece_fret_numbers", "piece_head_words",),
        "drawing_index_template": ("instrument_name", "card_notches_serve", "saw_main", "piece_laser", "piece_template", "piece_rail_words", "piece_rail_proof", "piece_lines_instead", "instrument_handed",),
    },
    "gramil.drawings.machines": {
        "piece_laser": ("shop_laser_kerf", "shop_laser_kerf_in",),
        "piece_router": ("shop_router_kerf", "shop_router_kerf_in",),
    },
    "gramil.drawings.neck": {
        "piece_side_board": ("board_nut_position", "board_tail_position", "board_thickness", "thickness_wedge",),
        "piece_side_shaft": ("fret_position", "section_neck_depth", "thickness_at_crest", "carve_heel_start",),
        "piece_side_heel": ("piece_side_shaft", "back_bow_length", "neck_set_board_at_join", "neck_heel_depth", "heel_wedge", "carve_heel_cap",),
        "piece_side_foot": ("piece_foot_side", "body_edge", "neck_set_board_at_join",),
        "piece_leaning": ("board_nut_position", "thickness_at_crest", "head_angle", "head_reach", "head_nut_thickness", "head_thickness", "head_veneer",),
        "piece_side_head": ("piece_leaning", "piece_side_shaft",),
        "piece_side_strings": ("board_nut_position", "thickness_at_crest", "nut_slot_over_crest", "nut_slot_blank", "head_nut_thickness", "head_run", "head_drop",),
        "piece_side_figures": ("fret_position", "neck_depth_first", "neck_depth_tenth", "neck_heel_depth", "back_bow_length", "neck_set_board_at_join",),
        "piece_head_figures": ("board_nut_position", "head_reach", "head_posts_x",),
        "drawing_neck": ("instrument_name", "piece_side_board", "piece_side_shaft", "piece_side_heel", "piece_side_foot", "piece_side_head", "piece_side_strings", "piece_neck_figures",),
        "piece_neck_figures": ("piece_side_figures", "piece_head_figures",),
        "piece_nut_places": ("string_along_nut", "instrument_handed",),
        "piece_nut_ends": ("board_nut_reach_treble", "board_nut_reach_bass", "instrument_handed",),
        "piece_nut_rule": ("piece_nut_places", "piece_nut_ends", "instrument_name",),
        "drawing_nut": ("instrument_name", "piece_laser", "piece_nut_rule", "piece_nut_places", "piece_nut_ends", "nut_spacing",),
        "piece_nut_face": ("arch_surface", "fret_slant", "piece_nut_ends", "instrument_handed", "lean_at_nut", "nut_width",),
        "piece_nut_front": ("piece_nut_places", "piece_nut_ends", "piece_nut_face", "nut_slot_over_crest", "nut_slot_top", "strings_gauges",),
        "drawing_setup_nut": ("instrument_name", "piece_nut_front", "piece_nut_places", "nut_slot_top",),
    },
    "gramil.drawings.neck_plank": {
        "piece_leaning_head": ("plank_head_start", "head_angle", "plank_head_along", "head_thickness", "head_veneer",),
        "piece_neck_line": ("carve_form", "carve_heel_start", "carve_heel_curve", "back_bow_length", "neck_heel_depth", "piece_foot_side", "body_edge",),
        "piece_carved": ("piece_neck_line", "piece_leaning_head",),
        "piece_plank": ("plank_scarfed", "carve_scarf", "piece_leaning_head", "plank_tail", "plank_thickness", "head_blank",),
        "piece_heel_blocks": ("plank_heel_blocks", "plank_tail", "head_blank", "plank_toe",),
        "piece_rod": ("rod_start", "rod_end", "neck_rod_depth", "neck_rod", "piece_leaning_head",),
        "piece_plank_sizes": ("plank_head_start", "plank_tail", "back_bow_length", "neck_heel_depth", "piece_leaning_head", "foot_there", "carve_foot_toe",),
        "drawing_neck_plank": ("instrument_name", "piece_plank", "piece_heel_blocks", "piece_carved", "piece_rod", "piece_plank_sizes",),
        "piece_stock": ("plank_layout", "plank_choice", "plank_pieces",),
        "piece_cut_list": ("plank_pieces",),
        "drawing_setup_neck_blank": ("instrument_name", "piece_stock", "piece_cut_list",),
        "drawing_setup_neck_scarf": ("instrument_name", "plank_scarfed", "head_blank", "plank_scarf_run", "plank_shaft",),
        "drawing_setup_neck_rod": ("instrument_name", "neck_rod", "carve_rod_access", "neck_rod_depth", "neck_rod_width", "carve_form",),
    },
    "gramil.drawings.openings": {
        "piece_openings": ("piece_soundhole", "piece_further_holes",),
        "piece_soundhole": ("opening_main", "rosette_rings",),
        "piece_further_holes": ("opening_further", "rosette_rings",),
        "piece_openings_sizes": ("opening_list", "opening_reach",),
        "drawing_openings": ("instrument_name", "instrument_handed", "opening_list", "opening_shaped", "rosette_rings", "piece_router",),
    },
    "gramil.drawings.plan": {
        "piece_outline": ("board_outline", "core_outline", "core_inset",),
        "piece_slots": ("slot_first", "core_x_bass", "core_y_bass", "core_x_treble", "core_y_treble",),
        "piece_zero_line": ("board_nut_position", "edge_x_bass", "edge_y_bass", "edge_x_treble", "edge_y_treble",),
        "piece_strings": ("string_x", "string_y",),
        "piece_markers": ("markers_frets", "markers_double", "markers_diameter", "marker_position", "marker_slant", "marker_offset", "markers_face",),
        "piece_side_dots": ("markers_frets", "markers_double", "markers_side_diameter", "edge_x_bass", "edge_y_bass",),
        "piece_pins": ("template_pin_first", "template_pin_last", "template_pin_reach", "shop_template_pin",),
        "piece_fret_numbers": ("slot_first", "edge_x_treble", "edge_y_treble",),
        "piece_sizes": ("board_outline", "board_nut_position", "board_tail_position", "fret_position", "nut_width",),
        "piece_tail_size": ("board_outline", "board_width_at_tail", "piece_pins",),
        "piece_head_words": ("instrument_name", "scale_bass", "scale_treble", "scale_zero_fret", "board_outline",),
        "piece_side_words": ("edge_x_bass", "board_outline",),
    },
    "gramil.drawings.ports": {
        "piece_ports_on_side": ("port_list", "port_bass", "treble_side_along", "side_along", "side_stations", "piece_bass_turned",),
        "piece_ports_on_treble": ("port_treble", "treble_side_along", "treble_side_stations", "piece_treble_turned",),
        "piece_small_ports": ("port_list", "treble_side_along", "piece_small_side_share",),
    },
    "gramil.drawings.section": {
        "piece_slope": ("station_middle_fret", "lean_at_edge_treble", "edge_y_treble", "instrument_handed",),
        "piece_bottom": ("station_middle_fret", "arch_surface", "fret_position", "core_width_at_fret", "slot_depth_at_crest", "slots_bottom",),
        "piece_across": ("station_middle_fret", "arch_surface", "fret_position", "board_width_at_fret", "core_width_at_fret", "thickness_at_crest", "piece_bottom", "piece_slope",),
        "piece_section_wood": ("piece_across", "wire_crown_height",),
        "piece_section_sizes": ("piece_across", "instrument_handed",),
        "drawing_section": ("instrument_name", "piece_section_wood", "piece_section_sizes", "station_middle_fret",),
    },
    "gramil.drawings.setup_bevels": {
        "piece_bevel_sections": ("bevel_laid", "bevelled_blocks", "channel_edge_top", "channel_edge_back", "body_wall",),
        "drawing_setup_bevels": ("instrument_name", "piece_bevel_sections",),
    },
    "gramil.drawings.setup_braces": {
        "piece_small_braces": ("brace_list", "brace_crossings",),
        "drawing_setup_braces": ("instrument_name", "piece_small_braces",),
    },
    "gramil.drawings.setup_bridge": {
        "piece_lying_share": ("bridge_outline",),
        "piece_lying_lines": ("piece_bridge_lines", "piece_bridge_run", "bridge_outline", "piece_lying_share",),
        "piece_lying_sizes": ("bridge_outline", "piece_lying_share", "piece_lying_lines",),
        "piece_lying_words": ("bridge_outline", "bridge_hold_y", "piece_lying_share",),
        "drawing_setup_bridge": ("instrument_name", "instrument_handed", "piece_lying_lines", "piece_lying_sizes", "piece_lying_words", "piece_lying_share",),
    },
    "gramil.drawings.setup_details": {
        "piece_ledge_board": ("core_inset", "ledge_choice", "thickness_at_edge_treble", "station_middle_fret",),
        "piece_ledge_cutter": ("ledge_choice", "thickness_at_edge_treble", "station_middle_fret",),
        "piece_ledge_sizes": ("ledge_choice", "core_inset", "thickness_at_edge_treble", "station_middle_fret",),
        "drawing_setup_ledge": ("instrument_name", "core_inset", "ledge_choice", "piece_ledge_board", "piece_ledge_cutter", "piece_ledge_sizes",),
        "piece_kerf": ("saw_kerf", "wire_tang_thickness",),
        "piece_wire_board": ("piece_kerf", "slot_depth_at_crest",),
        "piece_wire_profile": ("wire_crown_width", "wire_crown_height", "wire_tang_thickness", "wire_tang_depth", "wire_bead_thickness",),
        "piece_wire_end": ("core_inset", "wire_nip_back", "wire_crown_height", "wire_tang_depth", "slot_need",),
        "drawing_setup_wire": ("instrument_name", "piece_wire_board", "piece_wire_profile", "piece_wire_end",),
    },
    "gramil.drawings.setup_edges": {
        "piece_edge_top": ("channel_edge_top", "channel_cuts", "body_wall", "body_linings", "body_linings_height",),
        "piece_edge_back": ("channel_edge_back", "channel_cuts", "body_wall", "body_linings", "body_linings_height",),
        "drawing_setup_channels": ("instrument_name", "piece_edge_top", "piece_edge_back",),
    },
    "gramil.drawings.setup_openings": {
        "drawing_setup_openings": ("instrument_name", "instrument_handed", "opening_list", "opening_shaped", "rosette_rings",),
    },
    "gramil.drawings.setup_plans": {
        "piece_squeezed": ("blank_length", "blank_width",),
        "piece_blank": ("piece_squeezed", "blank_length", "blank_width", "board_outline",),
        "piece_board_on_blank": ("piece_squeezed", "board_outline", "piece_blank",),
        "drawing_setup_blank": ("instrument_name", "piece_squeezed", "piece_blank", "piece_board_on_blank", "template_pin_first", "template_pin_last",),
        "drawing_setup_layout": ("instrument_name", "instrument_handed", "piece_squeezed", "piece_blank", "piece_layout_lines", "piece_layout_sizes",),
        "piece_layout_lines": ("piece_squeezed", "board_outline", "piece_blank", "piece_slots",),
        "piece_layout_sizes": ("piece_squeezed", "board_tail_position", "board_width_position", "fret_position", "station_middle_fret", "piece_blank",),
        "piece_taper_corners": ("board_outline", "instrument_handed",),
        "piece_taper_board": ("piece_squeezed", "piece_taper_corners", "piece_blank",),
        "piece_taper_carriage": ("piece_squeezed", "piece_taper_corners", "jig_taper", "piece_blank",),
        "drawing_setup_taper": ("instrument_name", "piece_squeezed", "piece_taper_board", "piece_taper_carriage",),
        "piece_marked_fret": ("markers_frets", "markers_double",),
        "drawing_setup_markers": ("instrument_name", "instrument_handed", "piece_marked_fret", "piece_markers_between", "piece_markers_edge", "markers_face",),
        "piece_markers_between": ("piece_marked_fret", "piece_slots", "piece_markers", "slot_first", "marker_position", "edge_y_treble",),
        "piece_markers_edge": ("piece_marked_fret", "marker_side_depth", "markers_side_diameter", "thickness_at_edge_bass",),
    },
    "gramil.drawings.setup_saddle": {
        "piece_saddle_share": ("saddle_length",),
        "piece_saddle_behind": ("saddle_tall", "string_along_saddle", "saddle_length", "saddle_slot_depth", "piece_saddle_share",),
        "piece_saddle_above": ("saddle_off_line", "saddle_thickness", "string_along_saddle", "saddle_length", "piece_saddle_share",),
        "piece_saddle_sides": ("saddle_length", "piece_saddle_share",),
        "drawing_setup_saddle": ("instrument_name", "instrument_handed", "piece_saddle_behind", "piece_saddle_above", "piece_saddle_sides", "piece_saddle_share",),
    },
    "gramil.drawings.setup_sections": {
        "piece_sawn": ("piece_across", "slots_cut", "slots_crest_loss", "thickness_before_levelling", "slot_depth_at_crest",),
        "piece_across_view": ("piece_across", "saw_main",),
        "piece_slot_across": ("piece_sawn", "piece_across_view", "piece_across",),
        "piece_slot_along": ("piece_sawn", "piece_across_view", "piece_kerf", "slot_depth_setting",),
        "piece_slot_machine": ("piece_sawn", "piece_across_view", "saw_main", "card_notches_serve",),
        "drawing_setup_slot": ("instrument_name", "piece_slot_across", "piece_slot_along", "piece_slot_machine",),
        "piece_shallow": ("piece_across", "slots_bottom", "slot_kerf_at_crest", "slot_to_deepen", "limit_tolerance_height",),
        "drawing_setup_deepen": ("instrument_name", "piece_across", "piece_sawn", "slots_bottom", "slots_cut", "piece_shallow",),
        "piece_arch_nut": ("arch_surface", "nut_width", "thickness_before_levelling", "block_at_nut",),
        "piece_arch_end": ("arch_surface", "board_tail_position", "board_width_at_tail", "thickness_before_levelling", "block_at_end",),
        "drawing_setup_arch": ("instrument_name", "piece_arch_nut", "piece_arch_end",),
        "piece_side_view": ("board_length", "board_nut_position",),
        "drawing_setup_level": ("instrument_name", "piece_side_view", "board_nut_position", "board_tail_position", "thickness_before_levelling", "piece_level_sizes",),
        "piece_level_sizes": ("piece_side_view", "piece_level_run", "piece_level_edge", "board_level_underside",),
        "piece_level_run": ("fret_position", "thickness_at_crest", "board_tail_position", "board_thickness",),
        "piece_level_edge": ("edge_x_treble", "arch_fall_at_edge_treble",),
    },
    "gramil.drawings.setup_side": {
        "piece_small_side_share": ("side_length",),
        "piece_small_side": ("side_along", "side_upper", "side_lower", "piece_small_side_share",),
        "piece_small_treble": ("treble_side_along", "treble_side_upper", "treble_side_lower", "treble_side_stations", "piece_small_side_share", "instrument_handed",),
        "piece_small_side_stations": ("side_stations", "side_along", "side_upper", "side_lower", "piece_small_side_share",),
        "drawing_setup_side": ("instrument_name", "piece_small_side", "piece_small_side_stations", "piece_small_treble", "piece_small_ports", "piece_small_side_share",),
    },
    "gramil.drawings.side": {
        "drawing_side": ("instrument_name", "side_along", "side_upper", "side_lower", "side_stations", "piece_router", "piece_unrolled_words", "piece_bass_turned", "piece_side_called", "piece_bevels_on_side", "piece_ports_on_side",),
        "drawing_treble_side": ("instrument_name", "treble_side_along", "treble_side_upper", "treble_side_lower", "treble_side_stations", "piece_router", "piece_treble_words", "piece_treble_turned", "piece_ports_on_treble",),
        "piece_bass_turned": ("instrument_handed", "treble_side_along",),
        "piece_side_called": ("treble_side_along",),
        "piece_treble_turned": ("instrument_handed",),
        "piece_unrolled_words": ("instrument_name", "instrument_handed", "side_along", "side_upper", "side_lower", "side_stations", "treble_side_along", "piece_bass_turned", "bevel_list",),
        "piece_treble_words": ("instrument_name", "treble_side_along", "treble_side_upper", "treble_side_lower", "treble_side_stations", "piece_treble_turned",),
    },
    "gramil.drawings.string_cards": {
        "piece_saddle_card": ("saddle_tall", "string_along_saddle", "saddle_length",),
        "piece_nut_card": ("nut_slot_over_crest", "nut_slot_top", "string_along_nut", "board_nut_reach_treble", "board_nut_reach_bass", "thickness_at_crest",),
        "piece_spacing_cards": ("string_along_nut", "string_along_saddle", "board_nut_reach_treble", "board_nut_reach_bass", "saddle_length", "thickness_at_crest",),
        "piece_string_words": ("instrument_name", "saddle_length", "saddle_tall", "string_along_saddle",),
        "piece_string_sides": ("saddle_length",),
        "drawing_string_gauges": ("instrument_name", "instrument_handed", "piece_laser", "piece_string_card_marks", "piece_string_words",),
        "piece_string_card_marks": ("piece_saddle_card", "piece_nut_card", "piece_spacing_cards", "piece_string_sides",),
    },
    "gramil.drawings.whole": {
        "piece_whole_strings": ("string_x", "string_y_nut", "string_y_bridge", "saddle_break_x", "head_posts_x", "head_posts_y", "board_nut_position",),
        "piece_whole_head": ("head_posts_x", "head_posts_y", "head_tuners", "head_slot_width", "board_nut_position",),
        "piece_whole_bridge": ("bridge_outline", "saddle_break_x", "string_y_bridge", "piece_hold",),
        "piece_whole_body": ("back_bow_length", "top_length", "saddle_position",),
        "piece_whole_board": ("piece_outline", "piece_slots", "piece_markers",),
    },
    "gramil.top.back": {
        "rear_bars": ("brace_list", "brace_crossings", "fitted_braces",),
        "rear_plate": ("body_shells", "body_back_thickness", "body_back_radius", "body_length", "rear_bars", "timber_back",),
        "rear_coarse": ("rear_plate",),
        "rear_fine": ("rear_plate",),
        "rear_modes": ("rear_coarse", "rear_fine", "timber_back",),
    },
    "gramil.top.model": {
        "braced_bars": ("brace_list", "brace_crossings", "fitted_braces",),
        "braced_blocks": ("brace_bridge", "plate_shapes", "bridge_thickness", "timber_bridge", "timber_bridge_plate",),
        "braced_pulls": ("brace_bridge", "string_pull", "bridge_lever", "string_y_bridge",),
        "braced_plate": ("body_shells", "top_thickness", "top_radius", "opening_list", "fitted_top", "body_length", "graduated_edge", "top_edge_run",),
        "braced_top": ("braced_plate", "braced_bars", "braced_blocks", "braced_pulls", "brace_bridge", "body_saddle",),
        "braced_coarse": ("braced_top",),
        "braced_fine": ("braced_top",),
        "braced_quick": ("braced_coarse",),
        "braced_final": ("braced_fine",),
    },
    "gramil.top.modes": {
        "mode_pictures": ("braced_final",),
        "mode_list": ("braced_quick", "braced_final", "mode_pictures", "pulled_spread",),
        "mode_near": ("mode_list",),
        "mode_with_air": ("braced_final", "body_air_volume", "body_air_openings", "opening_list", "port_list",),
        "mode_air_lower": ("mode_with_air",),
        "mode_air_upper": ("mode_with_air",),
        "mode_first_supported": ("braced_quick",),
    },
    "gramil.top.pictures": {
        "piece_top_small": ("body_shells", "brace_list", "body_length",),
        "drawing_top_modes": ("instrument_name", "instrument_handed", "piece_top_small", "mode_pictures", "body_length", "body_width",),
        "piece_top_mode_signs": ("mode_pictures",),
        "drawing_setup_voice": ("instrument_name", "instrument_handed", "body_shells", "brace_list", "shaving_list", "body_length",),
    },
    "gramil.top.pull": {
        "pulled_turn": ("braced_final",),
        "pulled_turn_within": ("braced_quick", "braced_final",),
        "pulled_spread": ("fitted_top", "fitted_braces",),
        "pulled_turn_least": ("pulled_turn", "pulled_turn_within", "pulled_spread",),
        "pulled_turn_most": ("pulled_turn", "pulled_turn_within", "pulled_spread",),
        "pulled_turn_supported": ("braced_quick",),
        "pulled_sink": ("braced_final",),
        "pulled_sink_within": ("braced_quick", "braced_final",),
        "pulled_sink_x": ("braced_final",),
        "pulled_rise": ("braced_final",),
        "pulled_rise_within": ("braced_quick", "braced_final",),
        "pulled_rise_x": ("braced_final",),
        "pulled_lift": ("braced_final",),
        "pulled_action": ("pulled_lift", "height_saddle_share",),
        "pulled_turn_crept_least": ("pulled_turn", "limit_top_creep_least",),
        "pulled_turn_crept_most": ("pulled_turn", "limit_top_creep_most",),
        "pulled_turn_dry": ("pulled_turn", "swell_moisture_dry", "fitted_top",),
        "pulled_turn_damp": ("pulled_turn", "swell_moisture_wet", "fitted_top",),
        "pulled_strain_top": ("braced_final",),
        "pulled_strain_brace": ("braced_final",),
        "pulled_strained_brace": ("braced_final",),
        "pulled_said": (),
    },
    "gramil.top.pushing": {
        "push_list": ("timber_pushes", "braced_quick", "braced_final", "pulled_spread",),
    },
    "gramil.top.shaving": {
        "shaving_groups": ("braces_asked",),
        "shaving_changes": ("braced_final",),
        "shaving_list": ("shaving_groups", "shaving_changes", "braced_final",),
        "shaving_step": (),
        "shaving_thickness": ("shaving_changes",),
    },
    "gramil.top.sheets": {
        "setup_top_under_strings": ("mode_list",),
        "setup_voice_top": ("shaving_list",),
    },
    "gramil.top.verdicts": {
        "finding_top_solved": ("braced_coarse", "braced_fine",),
        "finding_top_turn": ("pulled_turn", "limit_top_turn_least", "limit_top_turn_most",),
        "finding_top_strain": ("pulled_strain_top", "pulled_strain_brace", "limit_top_strain_most",),
        "finding_top_action": ("pulled_action", "heights_body_rise",),
        "finding_top_modes": ("mode_near",),
        "finding_tried_wood": ("fitted_pieces",),
    },
    "gramil.top.woods": {
        "fitted_pieces": ("timber_tried", "swell_moisture_made",),
        "fitted_top": ("timber_top", "timber_tried", "fitted_pieces",),
        "fitted_braces": ("timber_braces", "timber_tried", "fitted_pieces",),
    },
}
"""What each figure follows from, by module: the parameters of its function."""
SHOWS: dict[str, tuple[str, ...]] = {
    "drawing_bevel_arm": ("bevel_list",),
    "drawing_bevel_rib": ("bevel_list",),
    "drawing_braces": ("brace_crossings", "brace_list",),
    "drawing_heights": ("crown_height", "heights_relief",),
    "drawing_mould": ("body_mould_half_width", "body_mould_length", "body_mould_thickness",),
    "drawing_neck_facets": ("carve_facet_angle",),
    "drawing_nut": ("board_nut_length", "string_spread_along_nut",),
    "drawing_setup_blank": ("blank_length", "blank_thickness", "blank_width",),
    "drawing_setup_deepen": ("slot_depth_at_end", "slot_need", "slot_to_deepen",),
    "drawing_setup_neck_rod": ("neck_rod_depth", "neck_rod_width", "neck_section_under_channel", "rod_corner",),
    "drawing_setup_neck_scarf": ("head_angle", "head_blank", "head_scarf_length", "plank_scarf_run", "plank_shaft",),
    "drawing_setup_nut": ("nut_slot_over_board",),
    "drawing_setup_openings": ("opening_list", "rosette_rings",),
    "drawing_side": ("side_stations",),
    "drawing_top_modes": ("mode_list",),
    "drawing_treble_side": ("treble_side_stations",),
    "finding_action_bass": ("heights_action_bass", "limit_action_bass_least", "limit_action_bass_most",),
    "finding_action_treble": ("heights_action_treble", "limit_action_treble_least", "limit_action_treble_most",),
    "finding_back_bow": ("back_bow_least", "back_bow_most", "limit_back_bow", "saw_kerf",),
    "finding_bead_bite": ("limit_bead_bite_caution", "saw_kerf", "wire_fits",),
    "finding_behind_channel": ("channel_list", "limit_behind_channel",),
    "finding_bend": ("body_bend_ratio", "limit_bend_ratio",),
    "finding_beside_board": ("access_beside_board",),
    "finding_bevel_glued": ("bevelled_blocks", "limit_plate_glued", "limit_plate_glued_least",),
    "finding_bevel_slope": ("bevel_list", "limit_bevel_steepest",),
    "finding_bevel_under": ("bevelled_blocks", "limit_lining_under",),
    "finding_binding_bend": ("limit_bend_ratio", "strip_list",),
    "finding_binding_cover": ("channel_list", "limit_binding_cover",),
    "finding_binding_step": ("limit_binding_step", "swell_step_dry",),
    "finding_blank": ("blank_width",),
    "finding_block_beside_cutaway": ("body_blocks",),
    "finding_blocks": ("block_at_end", "block_at_middle", "block_at_nut", "limit_block_misfit",),
    "finding_board_moisture": ("air_pieces", "blank_choice",),
    "finding_board_over_hole": ("soundhole_from_board",),
    "finding_body": ("body_perimeter",),
    "finding_body_length": ("body_length", "top_length",),
    "finding_body_rise": ("heights_body_rise", "limit_body_rise_least", "limit_body_rise_most",),
    "finding_brace_low": ("brace_low",),
    "finding_brace_outside": ("brace_list",),
    "finding_brace_stock": ("stick_list",),
    "finding_braces_apart": ("limit_brace_room", "room_between_braces",),
    "finding_braces_at_bevel": ("bevelled_braces",),
    "finding_braces_meet": ("brace_list",),
    "finding_braces_to_blocks": ("limit_brace_room", "room_braces_to_blocks",),
    "finding_braces_to_hole": ("limit_brace_to_hole", "room_braces_to_hole",),
    "finding_break_angle": ("bridge_break_angle", "limit_break_angle_saddle", "limit_break_angle_saddle_least",),
    "finding_break_at_nut": ("head_break_angle", "limit_break_angle_least", "limit_break_angle_most",),
    "finding_break_points": ("limit_saddle_edge", "saddle_to_face",),
    "finding_breaking": ("limit_breaking_reserve", "limit_breaking_reserve_least", "string_reserve",),
    "finding_bridge_holds": ("bridge_length",),
    "finding_bridge_in_bout": ("body_width_share", "limit_bridge_width_share",),
    "finding_carve_gauged": ("carve_gauged", "limit_carve_stations",),
    "finding_channel_cutters": ("channel_cuts", "limit_binding_proud_least", "limit_binding_proud_most",),
    "finding_channel_lean": ("channel_tilts", "limit_channel_lean",),
    "finding_clearance": ("limit_clearance_least", "limit_clearance_most", "slots_clearance",),
    "finding_courses": ("limit_single_strings", "strings_count",),
    "finding_crest_loss": ("limit_crest_loss_least", "limit_crest_loss_most", "slots_crest_loss",),
    "finding_crossing_room": ("limit_crossing_room", "room_crossing_to_hole",),
    "finding_crown_left": ("crown_height", "limit_crown_least",),
    "finding_deepening_saw": ("saw_deepening", "wire_tang_thickness",),
    "finding_dome": ("dome_rise_dry",),
    "finding_edge_margin": ("limit_edge_margin", "string_margin_bass", "string_margin_treble",),
    "finding_edge_uneven": ("limit_edge_uneven", "thickness_edge_spread",),
    "finding_estimates": ("string_weight",),
    "finding_foot_heel": ("foot_heel_over", "limit_tolerance_outline",),
    "finding_foot_slots": ("foot_behind_slots", "foot_slot_depth", "foot_slot_depth_at_cap", "foot_slot_width",),
    "finding_foot_toe": ("foot_toe_room",),
    "finding_frets_reached": ("access_fret", "scale_frets",),
    "finding_gluing_air": ("air_humidity", "limit_gluing_humidity_least", "limit_gluing_humidity_most",),
    "finding_heel": ("body_depth_neck", "neck_heel_depth",),
    "finding_heel_carved": ("carve_deepest", "neck_heel_depth",),
    "finding_hole_at_bevel": ("bevelled_holes", "limit_opening_room",),
    "finding_hump": ("arch_hump", "limit_string_hump",),
    "finding_index_template": ("card_proof_octave", "fret_angle", "limit_slot_position", "template_matches",),
    "finding_inner_strings": ("limit_string_error_cents", "string_error",),
    "finding_intonation": ("intonation_cents_after", "intonation_nut_best", "intonation_rms_after", "intonation_rms_all_after", "intonation_saddle_best", "limit_cents_rms", "limit_cents_worst",),
    "finding_kerfs_agree": ("limit_fit_loosest", "saw_kerf_over",),
    "finding_ledge": ("core_inset", "ledge_choice", "limit_binding_proud_least", "limit_binding_proud_most",),
    "finding_left_under_slot": ("limit_under_slot", "slot_left_least",),
    "finding_levelling": ("thickness_wedge_angle",),
    "finding_lining_under": ("channel_list", "limit_lining_under",),
    "finding_moved": ("limit_saddle_place", "moved_bass", "moved_treble",),
    "finding_neck_angle": ("limit_neck_angle_least", "limit_neck_angle_most", "neck_angle_target",),
    "finding_neck_plank": ("limit_plank_over", "plank_over",),
    "finding_neck_reset": ("heel_wedge_to_take", "limit_heel_wedge", "neck_set_exposed",),
    "finding_neck_stock": ("plank_choice",),
    "finding_nut": ("intonation_nut_best", "intonation_rms_all_after", "intonation_rms_best", "limit_nut_gain",),
    "finding_nut_slots": ("limit_nut_first_least", "limit_nut_first_most", "nut_slot_over_first",),
    "finding_old_action": ("found_action_bass", "found_action_treble", "heights_action_bass",),
    "finding_old_bite": ("limit_bead_bite_caution", "refret_chosen",),
    "finding_old_bow": ("limit_back_bow", "refret_chosen_bow",),
    "finding_old_crowns": ("found_crown_least", "limit_crown_least",),
    "finding_old_left": ("found_left_least", "limit_under_slot",),
    "finding_old_room": ("limit_clearance_least", "refret_chosen",),
    "finding_old_saddle": ("found_exposed_bass", "found_exposed_treble", "limit_exposed_stop_least",),
    "finding_old_slots": ("limit_fit_loosest", "limit_fit_tightest", "refret_chosen",),
    "finding_opening_blocks": ("limit_opening_room", "opening_to_blocks",),
    "finding_opening_board": ("limit_opening_room", "opening_to_board",),
    "finding_opening_braces": ("limit_brace_to_hole", "opening_to_braces",),
    "finding_opening_linings": ("limit_opening_room", "opening_to_linings",),
    "finding_opening_plate": ("limit_opening_room", "opening_to_plate",),
    "finding_openings_apart": ("limit_opening_room", "opening_to_others",),
    "finding_over_top": ("limit_over_top_least", "limit_over_top_most", "neck_set_over_top_mean",),
    "finding_pairs": ("limit_pair_least", "limit_pair_most", "string_pair_bridge", "string_pair_nut",),
    "finding_permits": ("stuff_list",),
    "finding_pilot": ("limit_pilot_least", "slot_kerf_at_end",),
    "finding_pins": ("bridge_hold_spacing", "bridge_hold_wall", "bridge_hold_wood", "limit_pin_spacing", "limit_pin_spacing_least", "limit_pin_to_saddle",),
    "finding_pins_clear": ("limit_pin_room", "room_pins_to_braces",),
    "finding_plate_glued": ("channel_list", "limit_plate_glued",),
    "finding_plate_outside": ("plate_back",),
    "finding_plate_to_braces": ("limit_brace_room", "room_plate_to_braces",),
    "finding_plate_to_legs": ("limit_plate_to_leg", "room_plate_to_legs",),
    "finding_plate_under_pins": ("limit_plate_under_pin", "room_pins_in_plate",),
    "finding_port_at_bevel": ("bevelled_ports", "limit_port_room",),
    "finding_port_bend": ("limit_port_bend", "port_bends",),
    "finding_port_blocks": ("limit_port_room", "port_to_blocks",),
    "finding_port_linings": ("limit_port_room", "port_to_linings",),
    "finding_ports_apart": ("limit_port_room", "port_to_others",),
    "finding_relief_too_little": ("limit_relief_least", "relief_predicted_least", "relief_predicted_most",),
    "finding_relief_too_much": ("limit_relief_most", "limit_rod_reach", "relief_for_rod_least", "relief_for_rod_most", "relief_predicted_least", "string_pull_total",),
    "finding_relief_wanted": ("heights_relief", "limit_relief_least", "limit_relief_most",),
    "finding_reset_saddle": ("limit_exposed_stop_least", "limit_exposed_stop_most", "reset_exposed",),
    "finding_reset_tongue": ("limit_under_slot", "reset_tongue_left",),
    "finding_reset_wedge": ("limit_heel_wedge", "reset_wedge",),
    "finding_ring_channel": ("opening_cutter", "rosette_rings",),
    "finding_ring_edge": ("limit_opening_room", "opening_to_edge",),
    "finding_rod_blind_end": ("limit_rod_blind", "rod_blind_left",),
    "finding_rod_corner": ("limit_beside_rod", "rod_corner",),
    "finding_rod_over": ("limit_over_rod", "rod_over",),
    "finding_rod_reach": ("limit_rod_short", "rod_unreached",),
    "finding_rod_under_head": ("limit_beside_rod", "rod_under_head",),
    "finding_rows_of_pins": ("bridge_hold_back", "bridge_hold_between", "bridge_hold_clear", "bridge_hold_wood_across", "bridge_pin_diameter", "limit_pin_spacing_least", "limit_string_to_pin",),
    "finding_saddle_exposed": ("limit_exposed_least", "limit_exposed_most", "neck_set_exposed_mean",),
    "finding_saddle_high": ("limit_exposed_stop_most", "neck_set_exposed",),
    "finding_saddle_in_slot": ("limit_saddle_shows", "saddle_showing",),
    "finding_saddle_low": ("limit_exposed_stop_least", "neck_set_exposed",),
    "finding_saw": ("saw_kerf", "wire_tang_thickness",),
    "finding_scarf": ("head_scarf_length", "plank_head_along",),
    "finding_shaped_edge": ("opening_cutter_radius", "opening_list",),
    "finding_shop": ("shop_name",),
    "finding_side_between": ("channel_side_left", "limit_side_between",),
    "finding_side_under_bevel": ("bevel_list", "limit_side_under_bevel",),
    "finding_sideways_at_nut": ("head_sideways_bend", "head_straight_y", "limit_sideways_bend",),
    "finding_slack": ("limit_pull_least", "string_pull",),
    "finding_slot_depth": ("slot_depth_at_end", "slot_kerf_at_end", "wire_tang_depth",),
    "finding_sprout": ("limit_sprout", "sprout_moisture", "sprout_most",),
    "finding_stiffness_range": ("intonation_rms_all_after", "intonation_rms_softest", "intonation_rms_stiffest", "limit_cents_rms",),
    "finding_string_gap": ("string_gap_nut",),
    "finding_string_on_crown": ("height_over_crown",),
    "finding_strings_in_slots": ("head_posts_y", "head_slot_room", "head_slot_width", "limit_slot_room",),
    "finding_strings_past_posts": ("head_post_clear", "head_posts_y", "limit_string_to_post",),
    "finding_tight_bend": ("bend_thin_to", "bend_tightest_treble", "body_wall", "limit_bend_radius",),
    "finding_tight_bend_bass": ("bend_tightest_bass", "limit_bend_radius",),
    "finding_tongue": ("limit_tongue_gap", "neck_set_tongue_gap",),
    "finding_top_action": ("heights_body_rise", "pulled_action",),
    "finding_top_modes": ("mode_list",),
    "finding_top_solved": ("pulled_turn",),
    "finding_top_strain": ("limit_top_strain_most", "pulled_strain_brace", "pulled_strain_top", "pulled_strained_brace",),
    "finding_top_turn": ("limit_top_turn_least", "limit_top_turn_most", "pulled_turn", "pulled_turn_least", "pulled_turn_most",),
    "finding_torque": ("bridge_torque", "bridge_torque_least", "bridge_torque_most",),
    "finding_tried_wood": ("fitted_pieces",),
    "finding_tuner_edge": ("head_hole_to_edge", "limit_hole_edge",),
    "finding_tuners_apart": ("head_holes_apart", "limit_holes_apart",),
    "finding_under_channel": ("limit_under_rod", "neck_section_under_channel",),
    "finding_under_purfling": ("channel_list", "limit_under_purfling",),
    "finding_under_saddle_slot": ("bridge_under_slot", "limit_under_saddle_slot",),
    "finding_uneven": ("limit_pull_uneven", "string_pull_ratio",),
    "finding_wings": ("limit_wing_off_leg", "room_bridge_to_legs",),
    "finding_wire_fit": ("limit_fit_loosest", "limit_fit_tightest", "saw_kerf", "wire_fits",),
    "finding_wire_on_hand": ("wire_on_hand", "wire_total",),
    "finding_wood_stiffness": ("board_modulus", "board_wood", "carve_wood", "neck_modulus",),
    "piece_arch_cards": ("card_arches",),
    "piece_arch_end": ("card_arches",),
    "piece_arch_nut": ("card_arches",),
    "piece_bevel_sections": ("bevel_list", "bevelled_blocks",),
    "piece_body_places": ("body_bouts", "body_saddle", "opening_list", "soundhole_centre",),
    "piece_body_sizes": ("body_bouts", "body_length",),
    "piece_bridge_sizes": ("bridge_length", "bridge_width_square",),
    "piece_bridge_words": ("bridge_front", "bridge_front_from_join", "bridge_front_from_nut", "bridge_front_from_octave", "bridge_hold_behind", "bridge_hold_below", "bridge_hold_second", "bridge_hold_spread", "bridge_pin_diameter", "bridge_spread", "saddle_angle", "saddle_length", "saddle_position", "saddle_slot_depth", "saddle_thickness",),
    "piece_build_board_figures": ("body_edge", "neck_set_dome_rise", "neck_set_drop",),
    "piece_cut_list": ("plank_pieces",),
    "piece_cuts": ("carve_stations",),
    "piece_depth_cards": ("card_depths", "saw_kerf",),
    "piece_edge_back": ("body_wall", "channel_cuts", "channel_list",),
    "piece_edge_top": ("body_wall", "channel_cuts", "channel_list",),
    "piece_facets": ("carve_lines", "carve_stations",),
    "piece_foot_figures": ("carve_foot_toe_height", "foot_height", "foot_step", "neck_angle_face", "neck_heel_depth",),
    "piece_gap_cards": ("card_gaps",),
    "piece_gauge_cards": ("carve_stations",),
    "piece_head_figures": ("head_angle", "head_blank", "head_break_angle", "head_scarf_length",),
    "piece_head_words": ("scale_bass", "scale_join", "scale_treble",),
    "piece_laser": ("shop_laser_kerf",),
    "piece_layout_sizes": ("board_tail_position", "board_width", "board_width_at_tail", "fret_position", "nut_width",),
    "piece_ledge_cutter": ("ledge_choice",),
    "piece_ledge_sizes": ("core_inset", "ledge_choice",),
    "piece_level_sizes": ("board_thickness", "thickness_at_crest", "thickness_wedge",),
    "piece_list_back": ("brace_list",),
    "piece_list_top": ("brace_list",),
    "piece_lying_sizes": ("bridge_length", "bridge_width_square",),
    "piece_lying_words": ("saddle_set_back",),
    "piece_markers_between": ("marker_offset", "marker_position", "markers_diameter",),
    "piece_markers_edge": ("marker_side_depth", "markers_side_diameter",),
    "piece_nut_card": ("nut_slot_over_crest",),
    "piece_openings_sizes": ("opening_list",),
    "piece_plan_side_sizes": ("back_bow_length", "body_depth_neck", "body_depth_tail", "neck_angle_target", "neck_heel_depth",),
    "piece_plan_sizes": ("back_bow_length", "body_length", "body_width", "bridge_front_edge", "scale_run",),
    "piece_plank_sizes": ("back_bow_length", "head_angle", "head_blank", "head_scarf_length", "neck_heel_depth", "plank_head_along", "plank_shaft",),
    "piece_ports_on_side": ("port_list",),
    "piece_ports_on_treble": ("port_list",),
    "piece_rail_proof": ("card_proof_octave", "card_proof_pin",),
    "piece_rail_words": ("scale_bass", "scale_frets", "shop_pin_offset", "shop_template_pin",),
    "piece_rod": ("rod_end", "rod_start_away",),
    "piece_router": ("shop_router_kerf",),
    "piece_saddle_above": ("saddle_off_line",),
    "piece_saddle_behind": ("saddle_tall",),
    "piece_saddle_card": ("saddle_tall",),
    "piece_section_sizes": ("board_width_at_fret", "slot_depth_at_crest", "slot_left_at_crest", "thickness_at_crest", "thickness_at_edge_bass", "thickness_at_edge_treble",),
    "piece_set_backs": ("saddle_set_back",),
    "piece_set_figures": ("bridge_thickness", "heel_wedge", "neck_angle_target", "neck_set_board_at_join", "neck_set_dome_rise", "neck_set_straightedge", "saddle_exposed",),
    "piece_setup_flats": ("carve_lines", "carve_stations",),
    "piece_side_figures": ("back_bow_length", "heel_wedge", "neck_angle_face", "neck_depth_first", "neck_depth_tenth", "neck_heel_depth",),
    "piece_sizes": ("board_length", "fret_position", "nut_width",),
    "piece_slot_along": ("saw_kerf", "slot_depth_setting",),
    "piece_slot_figures": ("carve_slots_apart", "foot_length", "foot_slot_angle", "foot_slot_place", "foot_slot_width",),
    "piece_slot_sizes": ("head_roller_depth", "head_slot_width", "head_slots", "head_slots_apart",),
    "piece_small_braces": ("brace_list",),
    "piece_small_side_stations": ("side_stations",),
    "piece_strung_figures": ("height_at_saddle", "height_over_chord", "height_over_crown",),
    "piece_tail_size": ("board_width_at_tail",),
    "piece_taper_board": ("board_half_taper_angle",),
    "piece_taper_carriage": ("jig_taper", "taper_centre_nut", "taper_centre_tail",),
    "piece_title_block": ("body_length", "bridge_length", "bridge_width_square", "saddle_angle", "scale_run", "soundhole_across", "soundhole_diameter",),
    "piece_treble_words": ("treble_side_length",),
    "piece_tuner_list": ("head_hole", "head_posts_y", "head_sideways_bend", "head_width",),
    "piece_tuner_sizes": ("head_posts_x", "head_reach",),
    "piece_unrolled_words": ("side_length",),
    "piece_wire_board": ("saw_kerf",),
    "piece_wire_end": ("wire_nip_back",),
    "piece_wire_profile": ("wire_bead_thickness", "wire_crown_height", "wire_crown_width", "wire_tang_depth", "wire_tang_thickness",),
    "setup_arch": ("arch_fall_at_nut_end", "arch_fall_at_tail_end", "arching_edge_middle", "arching_fall_middle", "arching_radius_end", "arching_radius_middle", "arching_radius_nut", "block_at_end", "block_at_middle", "block_at_nut", "drawing_setup_arch", "limit_tolerance_height", "limit_tolerance_radius", "station_middle_fret", "stuff_list", "thickness_before_levelling",),
    "setup_as_found": ("found_action_bass", "found_action_treble", "found_crown", "found_exposed_bass", "found_exposed_treble", "found_nut_bass", "found_nut_treble", "found_pin", "found_relief", "found_saddle_bass", "found_saddle_slot_depth", "found_saddle_slot_width", "found_saddle_treble", "found_straightedge",),
    "setup_bevel": ("arm_bevel_drop", "arm_bevel_width", "bevel_list", "bevel_marks", "bevelled_bindings", "drawing_setup_bevels", "limit_tolerance_outline", "rib_bevel_drop", "rib_bevel_width", "stuff_list",),
    "setup_bevel_block": ("bevel_list", "bevelled_blocks", "bevelled_braces", "drawing_setup_bevels", "limit_tolerance_outline", "stuff_list",),
    "setup_bevel_veneer": ("bevel_veneer_length_arm", "bevel_veneer_length_rib", "bevel_veneer_width_arm", "bevel_veneer_width_rib", "bevel_veneers", "drawing_setup_bevels", "limit_tolerance_height", "stuff_list",),
    "setup_binding_bend": ("bend_treble", "body_tightest_bend", "limit_strip_over", "limit_tolerance_height", "side_stations", "strip_length", "strip_list", "stuff_list", "treble_side_stations",),
    "setup_blank": ("blank_choice", "blank_length", "blank_thickness", "blank_width", "board_wood", "drawing_setup_blank", "lean_corner_nut_bass", "lean_corner_nut_treble", "lean_corner_tail_bass", "lean_corner_tail_treble", "limit_tolerance_height", "stuff_list",),
    "setup_board_binding": ("binding_purfling", "binding_thickness", "board_width_at_fret", "core_inset", "limit_gluing_humidity", "limit_tolerance_height", "limit_tolerance_width", "station_middle_fret", "stuff_list",),
    "setup_body_binding": ("bend_treble", "bevelled_bindings", "channel_list", "channel_side_left", "drawing_setup_channels", "limit_binding_proud_least", "limit_gluing_humidity", "stuff_list",),
    "setup_brace_back": ("brace_crossings", "brace_list", "drawing_back_inside", "limit_gluing_humidity", "limit_tolerance_height", "stuff_list",),
    "setup_brace_stock": ("brace_crossings", "drawing_setup_braces", "stick_billets", "stick_list", "stuff_list",),
    "setup_brace_top": ("brace_crossings", "brace_list", "drawing_top_inside", "limit_gluing_humidity", "limit_tolerance_height", "stuff_list",),
    "setup_bridge": ("action_fret", "bridge_front_from_join", "bridge_front_from_nut", "bridge_front_from_octave", "bridge_length", "bridge_spread", "bridge_thickness", "bridge_torque", "bridge_width_square", "drawing_setup_bridge", "limit_tolerance_bridge", "limit_tolerance_outline", "saddle_position", "string_pull_said", "stuff_list",),
    "setup_bridge_again": ("limit_saddle_place", "moved_bass", "moved_slots_overlap", "moved_treble", "moved_wanted_bass", "moved_wanted_treble", "stuff_list",),
    "setup_bridge_plate": ("body_saddle", "bridge_plate_length_back", "bridge_plate_length_front", "bridge_plate_thickness", "bridge_plate_wood", "drawing_top_inside", "limit_tolerance_height", "limit_tolerance_outline", "plate_front", "plate_lean", "plate_length", "plate_width", "stuff_list",),
    "setup_build_board": ("body_edge", "body_length", "body_width", "drawing_build_board", "limit_tolerance_height", "limit_tolerance_outline", "neck_set_dome_rise", "neck_set_drop", "stuff_list", "top_radius",),
    "setup_built_on": ("body_edge", "body_saddle", "drawing_build_board", "foot_height", "foot_slot_bottom", "heights_body_rise", "limit_gluing_humidity", "limit_tolerance_bridge", "limit_tolerance_height", "limit_tolerance_outline", "neck_angle_target", "neck_set_drop", "stuff_list",),
    "setup_caliper": ("fret_cents_per_tenth", "fret_position", "fret_step",),
    "setup_channels": ("bevel_list", "channel_cuts", "channel_tilts", "downhill_treble", "drawing_setup_channels", "limit_binding_proud_least", "limit_tolerance_height", "stuff_list",),
    "setup_deepen": ("drawing_setup_deepen", "limit_pilot_least", "limit_tolerance_height", "saw_deepening", "saw_kerf", "slot_kerf_at_end", "slot_need", "slot_to_deepen", "stop_deepest_fret", "stuff_list", "wire_name", "wire_tang_depth", "wire_tang_thickness",),
    "setup_flush": ("body_back_thickness", "body_plate_allowance", "channel_flush_cutter", "downhill_treble", "limit_tolerance_height", "stuff_list", "top_thickness",),
    "setup_handed_back": ("heights_action_bass", "heights_action_treble", "heights_nut_bass", "heights_nut_treble", "heights_relief", "limit_relief_least", "limit_relief_most", "limit_tolerance_height",),
    "setup_heel_slots": ("body_neck_block_width", "body_wall", "carve_foot_toe", "carve_foot_toe_height", "carve_slot_room", "carve_slots_apart", "drawing_heel_slots", "foot_height", "foot_length", "foot_slot_angle", "foot_slot_bow", "foot_slot_depth", "foot_slot_depth_at_cap", "foot_slot_place", "foot_slot_width", "foot_step", "limit_tolerance_height", "limit_tolerance_outline", "neck_angle_face", "stuff_list",),
    "setup_in_tune": ("action_fret", "intonation_cents_after", "intonation_from_fret", "intonation_nut_best", "intonation_nut_forward", "intonation_octave_move", "intonation_rms_after", "intonation_rms_all_after", "intonation_rms_all_before", "intonation_rms_before", "intonation_rms_best", "intonation_to_fret", "limit_cents_worst", "pair_rms_all_on_one", "pair_rms_all_on_two", "pair_rms_on_one", "pair_rms_on_two", "saddle_set_back", "saddle_set_back_best", "stuff_list",),
    "setup_layout": ("board_length", "board_nut_position", "board_width_at_tail", "drawing_setup_layout", "edge_x_bass", "edge_x_treble", "edge_y_bass", "edge_y_treble", "fret_position", "limit_slot_position", "limit_tolerance_outline", "limit_tolerance_width", "nut_width", "station_middle_fret", "stuff_list",),
    "setup_ledge": ("binding_purfling", "binding_thickness", "core_inset", "drawing_setup_ledge", "feed_agreeing_edge", "feed_other_edge", "ledge_choice", "limit_binding_proud_least", "limit_binding_proud_most", "limit_slot_position", "limit_tolerance_height", "nut_width", "stuff_list",),
    "setup_level": ("drawing_setup_level", "limit_tolerance_height", "slot_left_least", "station_middle_fret", "stuff_list", "thickness_at_crest", "thickness_at_edge_treble", "thickness_to_plane", "thickness_wedge_angle",),
    "setup_markers": ("drawing_setup_markers", "limit_tolerance_outline", "marker_offset", "marker_position", "marker_side_depth", "markers_diameter", "markers_double", "markers_frets", "markers_side_diameter", "stuff_list",),
    "setup_mould": ("body_length", "body_mould_half_width", "body_mould_length", "body_mould_thickness", "body_width", "drawing_mould", "limit_tolerance_outline", "stuff_list",),
    "setup_neck_blank": ("carve_wood", "drawing_setup_neck_blank", "limit_rip_kerf", "limit_tolerance_height", "plank_choice", "plank_length", "plank_thickness", "plank_width", "stuff_list",),
    "setup_neck_carve": ("carve_flat_back", "carve_heel_cap", "carve_heel_width", "carve_lines", "carve_stations", "drawing_setup_neck_carve", "limit_tolerance_height", "stuff_list",),
    "setup_neck_head": ("drawing_setup_neck_head", "head_hole", "head_posts_x", "head_posts_y", "head_reach", "head_roller_depth", "head_slot_ramp", "head_slot_room", "head_slot_width", "head_slots_apart", "head_thickness", "limit_sideways_bend", "limit_tolerance_height", "limit_tolerance_outline", "stuff_list",),
    "setup_neck_joint": ("body_neck_block", "body_neck_block_width", "heel_wedge", "limit_tolerance_angle", "limit_tolerance_height", "limit_tolerance_outline", "neck_angle_face", "neck_angle_target", "neck_heel_depth", "stuff_list",),
    "setup_neck_rod": ("carve_rod_pocket_width", "drawing_setup_neck_rod", "limit_tolerance_height", "limit_tolerance_outline", "neck_rod_depth", "neck_rod_width", "neck_section_under_channel", "rod_corner", "rod_end", "rod_start", "rod_under_head", "stuff_list",),
    "setup_neck_scarf": ("carve_foot_toe", "drawing_setup_neck_scarf", "head_angle", "head_blank", "head_scarf_length", "limit_tolerance_angle", "limit_tolerance_outline", "neck_heel_depth", "plank_shaft", "stuff_list",),
    "setup_neck_set": ("bridge_thickness", "drawing_neck_set", "heel_wedge", "heel_wedge_to_take", "heights_body_rise", "limit_tolerance_height", "limit_tolerance_outline", "neck_angle_face", "neck_angle_target", "neck_heel_depth", "neck_set_exposed_mean", "neck_set_run_mean", "neck_set_straightedge", "neck_set_straightedge_on_board", "neck_set_straightedge_over_top", "neck_set_tongue_gap", "neck_straightedge", "saddle_exposed", "stuff_list",),
    "setup_nut_slots": ("board_nut_length", "crown_height", "drawing_setup_nut", "limit_nut_slot_room", "limit_slot_position", "limit_tolerance_outline", "limit_zero_fret_drop", "nut_slot_blank", "nut_slot_depth", "nut_slot_over_board", "nut_slot_over_first", "nut_slot_width", "nut_spacing", "string_spread_along_nut", "stuff_list",),
    "setup_old_slots": ("found_arch_radius", "found_board_thickness", "found_slot_depth", "found_slot_width", "stuff_list",),
    "setup_openings": ("drawing_setup_openings", "limit_tolerance_outline", "opening_cutter", "opening_list", "rosette_rings", "soundhole_across", "soundhole_along", "stuff_list",),
    "setup_owner_air": ("across_unheld", "board_wood", "dome_across", "dome_brace_height", "dome_brace_spacing", "dome_brace_width", "dome_rise_dry", "dome_rise_dry_least", "dome_rise_made", "dome_rise_wet", "dome_rise_wet_least", "limit_gluing_humidity", "limit_owner_humidity_least", "limit_owner_humidity_most", "sprout_least", "sprout_most", "stuff_list", "swell_moisture_dry", "swell_moisture_made", "swell_moisture_wet", "swell_step_dry", "swell_width_dry_least", "swell_width_dry_most", "swell_width_wet_least", "swell_width_wet_most", "top_brace_wood", "top_wood",),
    "setup_ports": ("drawing_setup_side", "limit_tolerance_outline", "port_list", "stuff_list",),
    "setup_refret": ("crown_height", "limit_clearance_least", "limit_fit_loosest", "limit_fit_tightest", "limit_tolerance_fit", "limit_tolerance_height", "refret_chosen", "refret_room", "stuff_list", "wire_name", "wire_tang_thickness",),
    "setup_relief": ("action_fret", "back_bow_least", "back_bow_most", "board_modulus", "drawing_heights", "height_over_crown", "height_saddle_share", "heights_relief", "limit_modulus_least", "limit_modulus_most", "limit_relief_least", "limit_relief_most", "limit_tolerance_height", "neck_modulus", "relief_predicted_least", "relief_predicted_most", "relief_rod_moment_least", "relief_rod_moment_most", "string_pull_said",),
    "setup_reset": ("action_wanted", "bridge_thickness", "limit_tolerance_height", "limit_under_slot", "neck_angle_target", "neck_set_straightedge", "reset_angle", "reset_exposed", "reset_tongue", "reset_tongue_left", "reset_wedge", "saddle_exposed", "stuff_list",),
    "setup_saddle": ("bridge_break_angle", "drawing_setup_saddle", "intonation_file_to", "limit_tolerance_outline", "neck_set_exposed", "saddle_blank_height", "saddle_length", "saddle_off_line", "saddle_set_back", "saddle_slot_depth", "saddle_tall", "saddle_thickness", "stuff_list",),
    "setup_saddle_slot": ("bridge_hold_across", "bridge_hold_behind", "bridge_hold_below", "bridge_hold_second", "bridge_hold_step", "bridge_pin_diameter", "bridge_under_slot", "drawing_setup_bridge", "limit_tolerance_height", "limit_tolerance_outline", "limit_under_saddle_slot", "saddle_angle", "saddle_end_bass", "saddle_end_treble", "saddle_length", "saddle_slot_depth", "saddle_thickness", "stuff_list",),
    "setup_sides": ("bend_thin_to", "bend_treble", "body_side_wood", "body_tightest_bend", "body_wall", "drawing_setup_side", "foot_slot_bottom", "limit_tolerance_height", "limit_tolerance_outline", "side_blank_length", "side_blank_width", "side_length", "side_length_middle", "side_stations", "stuff_list", "treble_side_length", "treble_side_length_middle", "treble_side_stations",),
    "setup_slot": ("drawing_setup_slot", "fret_position", "limit_slot_position", "limit_tolerance_fit", "limit_tolerance_height", "limit_under_slot", "saw_kerf", "saw_main", "slot_depth_setting", "slot_left_least", "slot_need", "station_middle_fret", "stop_over_cradle", "stop_thinnest_fret", "stuff_list", "wire_name", "wire_tang_depth", "wire_tang_thickness",),
    "setup_strings": ("bridge_torque", "bridge_torque_most", "string_elongation", "string_pull", "string_pull_said", "string_pull_total", "string_reserve", "string_weight", "strings_a4", "strings_core", "strings_course", "strings_frequency", "strings_gauges", "strings_plain", "strings_wrap",),
    "setup_taper": ("board_half_taper_angle", "board_taper_angle", "board_width_at_tail", "drawing_setup_taper", "feed_agreeing_edge", "feed_other_edge", "jig_taper", "limit_tolerance_height", "limit_tolerance_width", "nut_width", "stuff_list", "taper_centre_nut", "taper_centre_tail", "taper_edge_nut", "taper_edge_tail", "taper_half_width_nut", "taper_half_width_tail",),
    "setup_template": ("card_proof_octave", "card_proof_pin", "drawing_index_template", "jig_slots", "limit_slot_position", "limit_tolerance_height", "shop_laser_kerf", "shop_laser_kerf_in", "shop_pin_offset", "shop_template_pin", "station_middle_fret", "stuff_list", "template_matches", "template_notch_width", "template_pin_first", "template_pin_last",),
    "setup_top_under_strings": ("drawing_top_modes", "mode_air_lower", "mode_air_upper", "mode_list", "pulled_action", "pulled_rise", "pulled_rise_within", "pulled_rise_x", "pulled_said", "pulled_sink", "pulled_sink_within", "pulled_sink_x", "pulled_strain_brace", "pulled_strain_top", "pulled_strained_brace", "pulled_turn", "pulled_turn_crept_least", "pulled_turn_crept_most", "pulled_turn_damp", "pulled_turn_dry", "pulled_turn_least", "pulled_turn_most", "pulled_turn_supported", "pulled_turn_within", "top_brace_wood", "top_wood",),
    "setup_voice_top": ("drawing_setup_voice", "mode_list", "pulled_said", "pulled_turn", "pulled_turn_within", "shaving_list", "shaving_step", "stuff_list",),
    "setup_which_wire": ("found_slot_depth_least", "found_slot_width_least", "found_slot_width_most", "refret_bows", "refret_crowns", "refret_fits", "refret_verdicts",),
    "setup_wire": ("drawing_setup_wire", "limit_bead_bite_caution", "limit_fit_loosest", "limit_fit_tightest", "limit_tolerance_fit", "limit_tolerance_height", "limit_tolerance_radius", "stuff_list", "wire_bead_thickness", "wire_bend_radius", "wire_crown_height", "wire_crown_width", "wire_cut", "wire_fits", "wire_line", "wire_name", "wire_nip_back", "wire_on_hand", "wire_tang_depth", "wire_tang_thickness", "wire_total",),
}
"""What each page shows, read off its code: edges of the graph."""

if TYPE_CHECKING:
    from gramil.description.body.records import BraceAsked, OpeningAsked, PortAsked, RingAsked
    from gramil.description.neck.head_outline import HeadCurve
    from gramil.description.records import Blank, Block, Cutter, IndexTemplate, Jig, KeptPiece, Saw, Station, Stuff, Wire
    from gramil.description.wood.air_values import WoodState
    from gramil.description.wood.timbers import Push, TimberKnown, Tried
    from gramil.drawings.heights import Turned
    from gramil.drawings.index_template import Notches, Rail
    from gramil.drawings.kerf import Machine
    from gramil.drawings.marks import Drawing, Polyline
    from gramil.drawings.neck import Leaning
    from gramil.drawings.neck_plank import LeaningHead
    from gramil.drawings.pen import View
    from gramil.drawings.section import Across
    from gramil.drawings.setup_sections import Sawn
    from gramil.faults import Fault
    from gramil.findings.finding import Finding
    from gramil.layers import LayerInk
    from gramil.parts.bevel_records import Bevel, BevelAsked, BevelBinding, BevelBlock, BevelBrace, BevelLaid, BevelMark, BevelPattern, BevelVeneer
    from gramil.parts.body_records import Bend, Billet, BodyBlock, Bout, Brace, Crossing, Feature, Holder, PlateShape, Ring, Shell, SideStation, Spot, Stick, Stretch, Zeros
    from gramil.parts.cards import ArchCard, DepthCard, GapCard
    from gramil.parts.edge_records import Channel, Cut, Edge, EdgeLines, Strip, Tilt
    from gramil.parts.hands import Handed
    from gramil.parts.opening_records import Opening, OpeningGap, Port
    from gramil.parts.records import BlankChoice, BlockChoice, BowOfOld, CarveLine, CarveShape, CarveStation, CrownOnOld, FitInOld, LedgeChoice, NeckPiece, NeckYield, PieceOnStock, Run, SlotOption, TemplateMatch, VerdictOnOld, WedgeInOld, WireFit
    from gramil.parts.relief import PulledNeck
    from gramil.physics.compensation import Freedom, SetBacks
    from gramil.physics.layered_beam import Layers
    from gramil.physics.plates.bar import Bar, Gap
    from gramil.physics.plates.block import Block as BlockBlock
    from gramil.physics.plates.plate import Plate
    from gramil.physics.plates.timber import Timber
    from gramil.physics.stopped_string import StringPaths, StringStiffness
    from gramil.physics.two_mass import TwoMass
    from gramil.quantities import Celsius, Cents, Count, Gram, Hertz, MPa, Mm, Mm2, Mm3, Newton, NewtonM, NewtonMm, PerMm, PerMm2, Percent, Radians, Ratio
    from gramil.reference import Members, Rows
    from gramil.setups.setup import BigFigure, Setup, Table
    from gramil.shapes.crown import Crown
    from gramil.shapes.curve import Curve
    from gramil.shapes.dome import Dome
    from gramil.shapes.edge_bevel import EdgeBevel
    from gramil.shapes.half_outline import Station as HalfOutlineStation
    from gramil.shapes.hole import Hole
    from gramil.shapes.outline import Outline
    from gramil.shapes.profile import Profile
    from gramil.shapes.quadrilateral import Quadrilateral
    from gramil.shapes.strip_section import Moments
    from gramil.shapes.tapered_bar import TaperedBar
    from gramil.shapes.unrolled import UnrolledSide
    from gramil.top.braced import Attempt, Braced, Pull, Solved
    from gramil.top.derivatives import Changes
    from gramil.top.mode import Mode
    from gramil.top.modes import ModePicture, NearPair
    from gramil.top.pushing import PushCompared
    from gramil.top.shaving import Shaving
    from gramil.top.tapped import TriedWood
    from typing import Literal
    from gramil.reference import of
    from gramil.drawings import bevels as drawings_bevels
    from gramil.drawings import board as drawings_board
    from gramil.drawings import body as drawings_body
    from gramil.drawings import bracing as drawings_bracing
    from gramil.drawings import bridge as drawings_bridge
    from gramil.drawings import carve as drawings_carve
    from gramil.drawings import face_plan as drawings_face_plan
    from gramil.drawings import foot as drawings_foot
    from gramil.drawings import gauges as drawings_gauges
    from gramil.drawings import guitar as drawings_guitar
    from gramil.drawings import head as drawings_head
    from gramil.drawings import heights as drawings_heights
    from gramil.drawings import index_template as drawings_index_template
    from gramil.drawings import machines as drawings_machines
    from gramil.drawings import neck as drawings_neck
    from gramil.drawings import neck_plank as drawings_neck_plank
    from gramil.drawings import openings as drawings_openings
    from gramil.drawings import plan as drawings_plan
    from gramil.drawings import ports as drawings_ports
    from gramil.drawings import section as drawings_section
    from gramil.drawings import setup_bevels as drawings_setup_bevels
    from gramil.drawings import setup_braces as drawings_setup_braces
    from gramil.drawings import setup_bridge as drawings_setup_bridge
    from gramil.drawings import setup_details as drawings_setup_details
    from gramil.drawings import setup_edges as drawings_setup_edges
    from gramil.drawings import setup_openings as drawings_setup_openings
    from gramil.drawings import setup_plans as drawings_setup_plans
    from gramil.drawings import setup_saddle as drawings_setup_saddle
    from gramil.drawings import setup_sections as drawings_setup_sections
    from gramil.drawings import setup_side as drawings_setup_side
    from gramil.drawings import side as drawings_side
    from gramil.drawings import string_cards as drawings_string_cards
    from gramil.drawings import whole as drawings_whole
    from gramil.findings import on_air as findings_on_air
    from gramil.findings import on_bevel as findings_on_bevel
    from gramil.findings import on_board as findings_on_board
    from gramil.findings import on_body as findings_on_body
    from gramil.findings import on_braces as findings_on_braces
    from gramil.findings import on_bridge as findings_on_bridge
    from gramil.findings import on_carve as findings_on_carve
    from gramil.findings import on_cutaway as findings_on_cutaway
    from gramil.findings import on_edges as findings_on_edges
    from gramil.findings import on_heights as findings_on_heights
    from gramil.findings import on_intonation as findings_on_intonation
    from gramil.findings import on_neck as findings_on_neck
    from gramil.findings import on_old as findings_on_old
    from gramil.findings import on_openings as findings_on_openings
    from gramil.findings import on_permits as findings_on_permits
    from gramil.findings import on_slots as findings_on_slots
    from gramil.findings import on_strings as findings_on_strings
    from gramil.findings import on_tension as findings_on_tension
    from gramil.findings import on_wire as findings_on_wire
    from gramil.parts import access as part_access
    from gramil.parts import arch as part_arch
    from gramil.parts import back_bow as part_back_bow
    from gramil.parts import bends as part_bends
    from gramil.parts import bevel as part_bevel
    from gramil.parts import binding as part_binding
    from gramil.parts import binding_strips as part_binding_strips
    from gramil.parts import blank as part_blank
    from gramil.parts import block as part_block
    from gramil.parts import board as part_board
    from gramil.parts import body as part_body
    from gramil.parts import brace_room as part_brace_room
    from gramil.parts import brace_stock as part_brace_stock
    from gramil.parts import braces as part_braces
    from gramil.parts import bridge as part_bridge
    from gramil.parts import bridge_plate as part_bridge_plate
    from gramil.parts import cards as part_cards
    from gramil.parts import channels as part_channels
    from gramil.parts import dome_year as part_dome_year
    from gramil.parts import downhill as part_downhill
    from gramil.parts import features as part_features
    from gramil.parts import foot as part_foot
    from gramil.parts import found as part_found
    from gramil.parts import hands as part_hands
    from gramil.parts import head as part_head
    from gramil.parts import heights as part_heights
    from gramil.parts import intonation as part_intonation
    from gramil.parts import lean as part_lean
    from gramil.parts import markers as part_markers
    from gramil.parts import moved as part_moved
    from gramil.parts import movement as part_movement
    from gramil.parts import neck_blank as part_neck_blank
    from gramil.parts import neck_carve as part_neck_carve
    from gramil.parts import neck_section as part_neck_section
    from gramil.parts import neck_set as part_neck_set
    from gramil.parts import nut_slots as part_nut_slots
    from gramil.parts import openings as part_openings
    from gramil.parts import pairs as part_pairs
    from gramil.parts import port as part_port
    from gramil.parts import refret as part_refret
    from gramil.parts import relief as part_relief
    from gramil.parts import reset as part_reset
    from gramil.parts import rim_at_bevel as part_rim_at_bevel
    from gramil.parts import rod_channel as part_rod_channel
    from gramil.parts import saddle as part_saddle
    from gramil.parts import saw as part_saw
    from gramil.parts import scale as part_scale
    from gramil.parts import section as part_section
    from gramil.parts import sides as part_sides
    from gramil.parts import slot_options as part_slot_options
    from gramil.parts import slots as part_slots
    from gramil.parts import soundhole as part_soundhole
    from gramil.parts import string_lines as part_string_lines
    from gramil.parts import template as part_template
    from gramil.parts import tension as part_tension
    from gramil.parts import thickness as part_thickness
    from gramil.parts import top_across as part_top_across
    from gramil.parts import top_graduated as part_top_graduated
    from gramil.parts import treble_side as part_treble_side
    from gramil.parts import whole as part_whole
    from gramil.parts import wire as part_wire
    from gramil.setups import arching as setups_arching
    from gramil.setups import bevelling as setups_bevelling
    from gramil.setups import board_binding as setups_board_binding
    from gramil.setups import body_binding as setups_body_binding
    from gramil.setups import body_work as setups_body_work
    from gramil.setups import bridging as setups_bridging
    from gramil.setups import building_on as setups_building_on
    from gramil.setups import edging as setups_edging
    from gramil.setups import fretting as setups_fretting
    from gramil.setups import jig as setups_jig
    from gramil.setups import neck_carving as setups_neck_carving
    from gramil.setups import neck_joint as setups_neck_joint
    from gramil.setups import neck_set as setups_neck_set
    from gramil.setups import opening_work as setups_opening_work
    from gramil.setups import owner as setups_owner
    from gramil.setups import preparing as setups_preparing
    from gramil.setups import repairing as setups_repairing
    from gramil.setups import resetting as setups_resetting
    from gramil.setups import slotting as setups_slotting
    from gramil.setups import station as setups_station
    from gramil.setups import stop as setups_stop
    from gramil.setups import surfacing as setups_surfacing
    from gramil.setups import taper as setups_taper
    from gramil.top import back as top_back
    from gramil.top import model as top_model
    from gramil.top import modes as top_modes
    from gramil.top import pictures as top_pictures
    from gramil.top import pull as top_pull
    from gramil.top import pushing as top_pushing
    from gramil.top import shaving as top_shaving
    from gramil.top import sheets as top_sheets
    from gramil.top import verdicts as top_verdicts
    from gramil.top import woods as top_woods

    class WoodStateRef(Ref[WoodState]):
        name: Ref[str]
        wood: Ref[str]
        part: Ref[str]
        instrument: Ref[str]
        place: Ref[str]
        moisture_least: Ref[Percent]
        moisture_likely: Ref[Percent]
        moisture_most: Ref[Percent]
        when: Ref[str]

    class StationRef(Ref[Station]):
        fret: Ref[Ratio]
        beyond: Ref[Mm]

    class OutlineRef(Ref[Outline]):
        points: Members[Ref[Any], Any]
        corners: Members[Ref[int], int]
        bass: Members[Ref[Any], Any]
        bass_corners: Members[Ref[int], int]
        smooth: Ref[bool]
        alike: Ref[bool]
        half: Ref[Curve]
        length: Ref[Mm]
        width: Ref[Mm]
        perimeter: Ref[Mm]
        stations: Members[HalfOutlineStationRef, HalfOutlineStation]

    class BraceAskedRef(Ref[BraceAsked]):
        name: Ref[str]
        plate: Ref[str]
        held_to: Ref[str]
        start: Ref[Any]
        stop: Ref[Any]
        start_at: Ref[str]
        stop_at: Ref[str]
        width: Ref[Mm]
        height: Ref[Mm]
        ends: Ref[str]
        end_height: Ref[Mm]
        end_length: Ref[Mm]
        wood: Ref[str]
        crosses: Members[Ref[str], str]
        twin: Ref[str]

    class HeadCurveRef(Ref[HeadCurve]):
        points: Members[Ref[Any], Any]
        corners: Members[Ref[int], int]

    class OpeningAskedRef(Ref[OpeningAsked]):
        name: Ref[str]
        held_to: Ref[str]
        centre: Ref[Mm]
        aside: Ref[Mm]
        lean: Ref[Radians]
        shape: Ref[Literal['round', 'oval', 'D']]
        diameter: Ref[Mm]
        along: Ref[Mm]
        across: Ref[Mm]
        corner: Ref[Mm]
        hole: HoleRef

    class PortAskedRef(Ref[PortAsked]):
        name: Ref[str]
        side: Ref[Literal['treble', 'bass']]
        centre: Ref[Mm]
        below: Ref[Mm]
        shape: Ref[Literal['round', 'oval', 'D']]
        diameter: Ref[Mm]
        along: Ref[Mm]
        across: Ref[Mm]
        patch: Ref[Mm]
        patch_reach: Ref[Mm]
        hole: HoleRef

    class RingAskedRef(Ref[RingAsked]):
        name: Ref[str]
        round: Ref[str]
        inner: Ref[Mm]
        gap: Ref[Mm]
        width: Ref[Mm]
        depth: Ref[Mm]

    class BlankRef(Ref[Blank]):
        name: Ref[str]
        wood: Ref[str]
        length: Ref[Mm]
        width: Ref[Mm]
        thickness: Ref[Mm]
        count: Ref[Count]

    class BlockRef(Ref[Block]):
        name: Ref[str]
        curvature: Ref[PerMm]

    class CutterRef(Ref[Cutter]):
        name: Ref[str]
        diameter: Ref[Mm]
        bearings: Members[Ref[Mm], Mm]

    class JigRef(Ref[Jig]):
        name: Ref[str]
        purpose: Ref[str]
        constant: Ref[Mm]
        checked: Ref[str]

    class KeptPieceRef(Ref[KeptPiece]):
        name: Ref[str]
        wood: Ref[str]
        length: Ref[Mm]
        width: Ref[Mm]
        thickness: Ref[Mm]
        part: Ref[str]
        kept: Ref[bool]
        whole: Ref[bool]

    class LayerInkRef(Ref[LayerInk]):
        name: Ref[str]
        colour: Ref[str]
        weight: Ref[Mm]

    class SawRef(Ref[Saw]):
        name: Ref[str]
        kerf: Ref[Mm]
        cuts: Ref[str]
        rides_arch: Ref[bool]
        what: Ref[str]

    class IndexTemplateRef(Ref[IndexTemplate]):
        name: Ref[str]
        scale: Ref[Mm]
        frets: Ref[Count]
        pin: Ref[Mm]

    class WireRef(Ref[Wire]):
        name: Ref[str]
        crown_width: Ref[Mm]
        crown_height: Ref[Mm]
        tang_thickness: Ref[Mm]
        bead_thickness: Ref[Mm]
        tang_depth: Ref[Mm]
        on_hand: Ref[Mm]

    class StuffRef(Ref[Stuff]):
        name: Ref[str]
        wood: Ref[str]
        dust: Ref[str]
        permit: Ref[str]
        standing: Ref[str]
        doubt: Ref[str]

    class TimberKnownRef(Ref[TimberKnown]):
        timber: TimberRef
        spread: Ref[Ratio]
        measured: Ref[bool]
        told: Members[Ref[str], str]
        moisture: Ref[Percent]

    class PushRef(Ref[Push]):
        name: Ref[str]
        force: Ref[Newton]
        given: Ref[Mm]
        gauge: Ref[Mm]

    class TriedRef(Ref[Tried]):
        name: Ref[str]
        part: Ref[str]
        like: TimberKnownRef
        group: Ref[str]
        length: Ref[Mm]
        width: Ref[Mm]
        thickness: Ref[Mm]
        mass: Ref[Gram]
        moisture: Ref[Percent]
        along: Ref[Hertz]
        across: Ref[Hertz]
        twist: Ref[Hertz]
        span: Ref[Mm]
        force: Ref[Newton]
        given: Ref[Mm]

    class DrawingRef(Ref[Drawing]):
        name: Ref[str]
        title: Ref[str]
        seen_from: Ref[Literal['the face', 'the underside', 'the inside', 'the side', 'the end', 'either side', 'as each says']]
        marks: Members[Ref[Any], Any]
        stretch: Ref[float]
        scale: Ref[float]
        kerf: Ref[Any]
        told_at: Ref[Any]
        pieces_apart: Ref[bool]

    class TurnedRef(Ref[Turned]):
        join: Ref[Mm]
        board: Ref[Mm]
        angle: Ref[Radians]

    class RailRef(Ref[Rail]):
        head: Ref[Mm]
        tail: Ref[Mm]
        front: Ref[Mm]
        back: Ref[Mm]

    class NotchesRef(Ref[Notches]):
        centres: Members[Ref[Mm], Mm]
        width: Ref[Mm]
        depth: Ref[Mm]

    class MachineRef(Ref[Machine]):
        kerf: Ref[Mm]
        allowed_in: Ref[str]
        figure: Ref[Any]

    class LeaningRef(Ref[Leaning]):
        start: Ref[Any]
        angle: Ref[Radians]
        length: Ref[Mm]
        thickness: Ref[Mm]

    class LeaningHeadRef(Ref[LeaningHead]):
        start: Ref[Any]
        angle: Ref[Radians]
        length: Ref[Mm]
        wood: Ref[Mm]

    class AcrossRef(Ref[Across]):
        fret: Ref[int]
        half_width: Ref[Mm]
        half_core: Ref[Mm]
        crest: Ref[Mm]
        face: Members[Ref[Any], Any]
        bottom: Members[Ref[Any], Any]
        binding: Members[Ref[Any], Any]
        slope: Ref[Ratio]

    class ViewRef(Ref[View]):
        origin: Ref[Any]
        across: Ref[float]
        up: Ref[float]

    class PolylineRef(Ref[Polyline]):
        points: Members[Ref[Any], Any]
        layer: Ref[str]
        closed: Ref[bool]
        hatch: Ref[Literal['', 'along the grain', 'across the grain', 'metal', 'bone', 'void', 'left clear']]

    class SawnRef(Ref[Sawn]):
        face: Members[Ref[Any], Any]
        bottom: Members[Ref[Any], Any]
        under: Ref[Mm]
        finished: Members[Ref[Any], Any]

    class FindingRef(Ref[Finding]):
        name: Ref[str]
        severity: Ref[Literal['stop', 'caution', 'note', 'fine', 'not judged']]
        figure: Ref[Any]
        value: Ref[float]
        limit: Ref[Any]
        says: Ref[Any]
        remedy: Ref[Any]

    class CrownRef(Ref[Crown]):
        curvature_start: Ref[PerMm]
        curvature_end: Ref[PerMm]
        length: Ref[Mm]

    class LayersRef(Ref[Layers]):
        modulus: Ref[Any]
        area: Ref[Any]
        centroid: Ref[Any]
        inertia: Ref[Any]

    class BendRef(Ref[Bend]):
        name: Ref[str]
        kind: Ref[str]
        along: Ref[Mm]
        x: Ref[Mm]
        y: Ref[Mm]
        radius: Ref[Mm]
        turn: Ref[Radians]
        between: Ref[Radians]

    class BevelAskedRef(Ref[BevelAsked]):
        name: Ref[str]
        width: Ref[Mm]
        drop: Ref[Mm]
        length: Ref[Mm]
        place: Ref[Mm]
        block: Ref[str]
        block_width: Ref[Mm]
        block_height: Ref[Mm]
        layer: Ref[Mm]
        veneer: Ref[Mm]
        binding: Ref[str]
        plate: Ref[str]
        on_plate: Ref[bool]
        on_side: Ref[bool]

    class BevelLaidRef(Ref[BevelLaid]):
        asked: BevelAskedRef
        shape: EdgeBevelRef

    class BevelRef(Ref[Bevel]):
        name: Ref[str]
        plate: Ref[str]
        width: Ref[Mm]
        drop: Ref[Mm]
        below: Ref[Mm]
        length: Ref[Mm]
        start: Ref[Mm]
        middle: Ref[Mm]
        stop: Ref[Mm]
        slope: Ref[Radians]
        across: Ref[Mm]
        on_plate: Ref[Mm]
        on_side: Ref[Mm]
        area: Ref[Mm2]
        left: Ref[Mm]

    class BevelMarkRef(Ref[BevelMark]):
        name: Ref[str]
        along: Ref[Mm]
        width: Ref[Mm]
        drop: Ref[Mm]

    class BevelPatternRef(Ref[BevelPattern]):
        name: Ref[str]
        upper: Members[Ref[Any], Any]
        lower: Members[Ref[Any], Any]

    class BevelVeneerRef(Ref[BevelVeneer]):
        name: Ref[str]
        length: Ref[Mm]
        width: Ref[Mm]
        thickness: Ref[Mm]
        area: Ref[Mm2]

    class LedgeChoiceRef(Ref[LedgeChoice]):
        name: Ref[str]
        diameter: Ref[Mm]
        bearing: Ref[Mm]
        ledge: Ref[Mm]
        proud: Ref[Mm]

    class StripRef(Ref[Strip]):
        name: Ref[str]
        count: Ref[Count]
        length: Ref[Mm]
        height: Ref[Mm]
        thickness: Ref[Mm]
        wood: Ref[str]
        bend: Ref[Ratio]
        material: Ref[str]
        is_binding: Ref[bool]
        plastic: Ref[bool]
        bends_as_wood: Ref[bool]

    class BlankChoiceRef(Ref[BlankChoice]):
        name: Ref[str]
        wood: Ref[str]
        length_over: Ref[Mm]
        width_over: Ref[Mm]
        thickness_over: Ref[Mm]
        waste: Ref[Mm2]

    class BlockChoiceRef(Ref[BlockChoice]):
        name: Ref[str]
        radius: Ref[Mm]
        misfit: Ref[Mm]

    class QuadrilateralRef(Ref[Quadrilateral]):
        start_lower_x: Ref[Mm]
        start_lower_y: Ref[Mm]
        start_upper_x: Ref[Mm]
        start_upper_y: Ref[Mm]
        end_upper_x: Ref[Mm]
        end_upper_y: Ref[Mm]
        end_lower_x: Ref[Mm]
        end_lower_y: Ref[Mm]
        corners: Ref[Any]
        length: Ref[Mm]
        width: Ref[Mm]

    class ZerosRef(Ref[Zeros]):
        join: Ref[float]
        tail: Ref[float]
        saddle: Ref[float]
        soundhole: Ref[float]
        body: Ref[float]

    class BoutRef(Ref[Bout]):
        name: Ref[str]
        kind: Ref[str]
        x: Ref[Mm]
        width: Ref[Mm]
        along: Ref[Mm]
        radius: Ref[Mm]
        treble: Ref[Mm]
        edges: Ref[Any]

    class UnrolledSideRef(Ref[UnrolledSide]):
        outline: OutlineRef
        depth_start: Ref[Mm]
        depth_end: Ref[Mm]
        upper: DomeRef
        lower: DomeRef
        of: Ref[Literal['treble', 'bass']]
        half: Ref[Curve]
        other: UnrolledSideRef
        length: Ref[Mm]

    class ShellRef(Ref[Shell]):
        side: UnrolledSideRef
        lined: OutlineRef
        bare: OutlineRef

    class BodyBlockRef(Ref[BodyBlock]):
        name: Ref[str]
        start_x: Ref[Mm]
        end_x: Ref[Mm]
        half_width: Ref[Mm]
        depth: Ref[Mm]
        treble: Ref[Mm]
        volume: Ref[Mm3]
        corners: Ref[Any]

    class StickRef(Ref[Stick]):
        name: Ref[str]
        wood: Ref[str]
        length: Ref[Mm]
        width: Ref[Mm]
        height: Ref[Mm]

    class BilletRef(Ref[Billet]):
        name: Ref[str]
        wood: Ref[str]
        sticks: Ref[Count]
        left: Ref[Mm]

    class BraceRef(Ref[Brace]):
        name: Ref[str]
        plate: Ref[str]
        held_to: Ref[str]
        wood: Ref[str]
        ends: Ref[str]
        start_x: Ref[Mm]
        start_y: Ref[Mm]
        stop_x: Ref[Mm]
        stop_y: Ref[Mm]
        length: Ref[Mm]
        width: Ref[Mm]
        height: Ref[Mm]
        end_height: Ref[Mm]
        end_length: Ref[Mm]
        sagitta: Ref[Mm]
        radius: Ref[Mm]
        nearest: Ref[Mm]
        angle: Ref[Radians]
        footprint: Members[Ref[Any], Any]
        start: Ref[Any]
        stop: Ref[Any]

    class CrossingRef(Ref[Crossing]):
        name: Ref[str]
        over: Ref[str]
        under: Ref[str]
        x: Ref[Mm]
        y: Ref[Mm]
        angle: Ref[Radians]
        depth_over: Ref[Mm]
        depth_under: Ref[Mm]
        width_over: Ref[Mm]
        width_under: Ref[Mm]
        along_over: Ref[Mm]
        along_under: Ref[Mm]

    class SpotRef(Ref[Spot]):
        x: Ref[Mm]
        y: Ref[Mm]
        point: Ref[Any]

    class PlateShapeRef(Ref[PlateShape]):
        name: Ref[str]
        front_x: Ref[Mm]
        back_x: Ref[Mm]
        front_half: Ref[Mm]
        back_half: Ref[Mm]
        thickness: Ref[Mm]
        slant: Ref[Ratio]
        corners: Ref[Any]

    class ArchCardRef(Ref[ArchCard]):
        name: Ref[str]
        position: Ref[Mm]
        radius: Ref[Mm]
        half_width: Ref[Mm]
        fall: Ref[Mm]
        reach: Ref[Mm]
        half_angle: Ref[Radians]

    class DepthCardRef(Ref[DepthCard]):
        name: Ref[str]
        depth: Ref[Mm]

    class GapCardRef(Ref[GapCard]):
        name: Ref[str]
        thickness: Ref[Mm]

    class EdgeRef(Ref[Edge]):
        name: Ref[str]
        thickness: Ref[Mm]
        height: Ref[Mm]
        purfling: Ref[Mm]
        purfling_depth: Ref[Mm]
        wood: Ref[str]
        plate: Ref[Mm]
        material: Ref[str]
        reach: Ref[Mm]
        cover: Ref[Mm]

    class EdgeLinesRef(Ref[EdgeLines]):
        name: Ref[str]
        bound: OutlineRef
        purfled: OutlineRef

    class ChannelRef(Ref[Channel]):
        name: Ref[str]
        behind: Ref[Mm]
        lining: Ref[Mm]
        glued: Ref[Mm]
        past_linings: Ref[Mm]
        under_purfling: Ref[Mm]
        cover: Ref[Mm]

    class TiltRef(Ref[Tilt]):
        name: Ref[str]
        angle: Ref[Radians]
        along: Ref[Mm]
        lean: Ref[Mm]
        floor: Ref[Mm]

    class CutRef(Ref[Cut]):
        name: Ref[str]
        inset: Ref[Mm]
        depth: Ref[Mm]
        step: Ref[Mm]
        choice: Ref[str]
        diameter: Ref[Mm]
        bearing: Ref[Mm]
        ledge: Ref[Mm]
        proud: Ref[Mm]

    class StretchRef(Ref[Stretch]):
        name: Ref[str]
        start: Ref[Mm]
        stop: Ref[Mm]
        plate: Ref[str]

    class FeatureRef(Ref[Feature]):
        name: Ref[str]
        held_to: Ref[str]
        along: Ref[Mm]

    class HandedRef(Ref[Handed]):
        hand: Ref[str]

    class RunRef(Ref[Run]):
        points: Members[Ref[Any], Any]

    class StringPathsRef(Ref[StringPaths]):
        nut_x: Ref[Any]
        nut_height: Ref[Any]
        saddle_x: Ref[Any]
        saddle_height: Ref[Any]
        stop_x: Ref[Any]
        stop_height: Ref[Any]
        ratio: Ref[Any]
        finger_offset: Ref[Any]
        finger_depth: Ref[Any]
        end_slope: Ref[Any]

    class StringStiffnessRef(Ref[StringStiffness]):
        stretch: Ref[Any]
        bending_radius: Ref[Any]
        at_length: Ref[Any]

    class SetBacksRef(Ref[SetBacks]):
        nut: Ref[Any]
        saddle: Ref[Any]
        cents: Ref[Any]
        rms: Ref[Any]
        rms_of_all: Ref[float]

    class FreedomRef(Ref[Freedom]):
        shape: Ref[Any]

    class NeckPieceRef(Ref[NeckPiece]):
        name: Ref[str]
        length: Ref[Mm]
        width: Ref[Mm]
        thickness: Ref[Mm]

    class NeckYieldRef(Ref[NeckYield]):
        name: Ref[str]
        necks: Ref[Count]
        length: Ref[Mm]
        width: Ref[Mm]
        thickness: Ref[Mm]
        thickness_over: Ref[Mm]
        used: Ref[Ratio]

    class PieceOnStockRef(Ref[PieceOnStock]):
        name: Ref[str]
        along: Ref[Mm]
        across: Ref[Mm]
        length: Ref[Mm]
        width: Ref[Mm]

    class CarveShapeRef(Ref[CarveShape]):
        first: ProfileRef
        tenth: ProfileRef

    class TaperedBarRef(Ref[TaperedBar]):
        places: Members[Ref[Mm], Mm]
        profiles: Members[ProfileRef, Profile]

    class CarveStationRef(Ref[CarveStation]):
        name: Ref[str]
        fret: Ref[Ratio]
        position: Ref[Mm]
        width: Ref[Mm]
        depth: Ref[Mm]
        whole: Ref[Mm]
        exponent: Ref[Ratio]
        blend: Ref[Ratio]
        mix: Ref[Ratio]
        profile: ProfileRef

    class CarveLineRef(Ref[CarveLine]):
        name: Ref[str]
        station: Ref[str]
        number: Ref[Count]
        centre: Ref[Mm]
        joint: Ref[Mm]

    class MomentsRef(Ref[Moments]):
        area: Ref[Any]
        first: Ref[Any]
        second: Ref[Any]
        about_centroid: Ref[Any]

    class OpeningRef(Ref[Opening]):
        name: Ref[str]
        held_to: Ref[str]
        shape: Ref[str]
        x: Ref[Mm]
        y: Ref[Mm]
        diameter: Ref[Mm]
        along: Ref[Mm]
        across: Ref[Mm]
        lean: Ref[Radians]
        area: Ref[Mm2]
        edge: Ref[Mm]
        tightest: Ref[Mm]
        radius: Ref[Mm]
        plug: Ref[Mm]
        hole: HoleRef
        centre: Ref[Any]

    class OpeningGapRef(Ref[OpeningGap]):
        name: Ref[str]
        to: Ref[str]
        room: Ref[Mm]

    class PortRef(Ref[Port]):
        name: Ref[str]
        side: Ref[Literal['treble', 'bass']]
        shape: Ref[str]
        centre: Ref[Mm]
        below: Ref[Mm]
        height: Ref[Mm]
        diameter: Ref[Mm]
        along: Ref[Mm]
        across: Ref[Mm]
        area: Ref[Mm2]
        edge: Ref[Mm]
        radius: Ref[Mm]
        plug: Ref[Mm]
        patch: Ref[Mm]
        patch_along: Ref[Mm]
        patch_across: Ref[Mm]
        hole: HoleRef
        patch_corners: Members[Ref[Any], Any]

    class FitInOldRef(Ref[FitInOld]):
        name: Ref[str]
        narrowest: Ref[Mm]
        widest: Ref[Mm]
        bite: Ref[Mm]
        room: Ref[Mm]

    class VerdictOnOldRef(Ref[VerdictOnOld]):
        name: Ref[str]
        words: Ref[str]

    class CrownOnOldRef(Ref[CrownOnOld]):
        name: Ref[str]
        width: Ref[Mm]
        height: Ref[Mm]
        over_old: Ref[Mm]
        higher: Ref[Mm]

    class WedgeInOldRef(Ref[WedgeInOld]):
        name: Ref[str]
        least: Ref[Mm]
        most: Ref[Mm]

    class BowOfOldRef(Ref[BowOfOld]):
        name: Ref[str]
        least: Ref[Mm]
        most: Ref[Mm]

    class PulledNeckRef(Ref[PulledNeck]):
        stations: Ref[Any]
        stiffest: Ref[Any]
        softest: Ref[Any]
        lever: Ref[Any]
        first: Ref[Mm]
        far_end: Ref[Mm]

    class BevelBlockRef(Ref[BevelBlock]):
        name: Ref[str]
        kind: Ref[str]
        width: Ref[Mm]
        height: Ref[Mm]
        length: Ref[Mm]
        layers: Ref[Count]
        layer: Ref[Mm]
        glued: Ref[Mm]
        under: Ref[Mm]

    class BevelBindingRef(Ref[BevelBinding]):
        name: Ref[str]
        before: Ref[Mm]
        after: Ref[Mm]
        on_plate: Ref[Mm]
        on_side: Ref[Mm]

    class BevelBraceRef(Ref[BevelBrace]):
        name: Ref[str]
        bevel: Ref[str]
        inside: Ref[Mm]

    class SideStationRef(Ref[SideStation]):
        name: Ref[str]
        along: Ref[Mm]
        depth: Ref[Mm]
        radius: Ref[Mm]
        is_corner: Ref[bool]

    class SlotOptionRef(Ref[SlotOption]):
        name: Ref[str]
        bottom: Ref[str]
        cut: Ref[str]
        setting: Ref[Mm]
        measured_from: Ref[str]
        then: Ref[str]
        left_at_crest: Ref[Mm]
        left_at_end: Ref[Mm]
        pilot_at_end: Ref[Mm]
        stiffness_kept: Ref[Ratio]
        stiffness_kept_with_neck: Ref[Ratio]

    class RingRef(Ref[Ring]):
        name: Ref[str]
        inner: Ref[Mm]
        outer: Ref[Mm]
        depth: Ref[Mm]
        round: Ref[str]
        width: Ref[Mm]

    class TemplateMatchRef(Ref[TemplateMatch]):
        name: Ref[str]
        frets: Ref[Count]
        worst: Ref[Mm]
        serves: Ref[bool]

    class HolderRef(Ref[Holder]):
        name: Ref[str]
        share: Ref[Ratio]
        lean: Ref[Ratio]
        length: Ref[Mm]
        width: Ref[Mm]
        height: Ref[Mm]
        low: Ref[Mm]
        high: Ref[Mm]
        counts: Ref[Mm2]

    class WireFitRef(Ref[WireFit]):
        name: Ref[str]
        gap: Ref[Mm]
        bite: Ref[Mm]
        wedge_least: Ref[Mm]
        wedge_most: Ref[Mm]

    class SetupRef(Ref[Setup]):
        name: Ref[str]
        title: Ref[str]
        order: Ref[int]
        figures: Members[BigFigureRef, BigFigure]
        steps: Members[Ref[Any], Any]
        prove: Ref[Any]
        by: Members[Ref[str], str]
        tools: Members[Ref[Any], Any]
        drawing: Ref[Any]
        boxes: Members[Ref[Any], Any]
        tables: Members[TableRef, Table]
        closed: Ref[Any]
        box_near: Ref[Any]
        on: Members[Ref[Any], Any]
        instead: Members[Ref[str], str]
        notes: Members[Ref[Any], Any]
        texts: Members[Ref[Any], Any]

    class BarRef(Ref[Bar]):
        name: Ref[str]
        start: Ref[Any]
        stop: Ref[Any]
        width: Ref[float]
        crest: Members[Ref[Any], Any]
        wood: TimberRef
        side: Ref[int]
        gaps: Members[GapRef, Gap]
        cut: Ref[Literal['quarter', 'slab']]
        length: Ref[float]
        height: Ref[float]
        way: Ref[Any]
        left: Ref[Any]

    class ModeRef(Ref[Mode]):
        name: Ref[str]
        hertz: Ref[Hertz]
        within: Ref[Hertz]
        least: Ref[Hertz]
        most: Ref[Hertz]
        parts: Ref[int]

    class NearPairRef(Ref[NearPair]):
        name: Ref[str]
        one: Ref[str]
        other: Ref[str]
        hertz: Ref[Hertz]

    class TwoMassRef(Ref[TwoMass]):
        box: Ref[Hertz]
        closed: Ref[Hertz]
        lower: Ref[Hertz]
        upper: Ref[Hertz]

    class PushComparedRef(Ref[PushCompared]):
        name: Ref[str]
        given: Ref[Mm]
        solved: Ref[Mm]
        solved_within: Ref[Mm]
        least: Ref[Mm]
        most: Ref[Mm]
        factor: Ref[Ratio]
        factor_within: Ref[Ratio]
        turn: Ref[Radians]
        turn_within: Ref[Radians]

    class ShavingRef(Ref[Shaving]):
        name: Ref[str]
        turn: Ref[Radians]
        sink: Ref[Mm]
        rise: Ref[Mm]
        first: Ref[Hertz]
        second: Ref[Hertz]
        third: Ref[Hertz]
        room: Ref[Mm]
        place_x: Ref[Mm]
        place_y: Ref[Mm]
        wider_turn: Ref[Radians]
        wider_first: Ref[Hertz]
        aside_turn: Ref[Radians]
        aside_first: Ref[Hertz]
        turn_in_hundredths: Ref[Ratio]
        wider_turn_in_hundredths: Ref[Ratio]
        aside_turn_in_hundredths: Ref[Ratio]

    class TriedWoodRef(Ref[TriedWood]):
        name: Ref[str]
        known: TimberKnownRef
        along_within: Ref[Ratio]
        across_within: Ref[Ratio]
        twist_within: Ref[Ratio]
        carried: Ref[Ratio]
        shear_share: Ref[Ratio]
        faults: Members[FaultRef, Fault]

    class HalfOutlineStationRef(Ref[HalfOutlineStation]):
        kind: Ref[Literal['widest', 'narrowest']]
        x: Ref[Mm]
        half_width: Ref[Mm]
        along: Ref[Mm]

    class HoleRef(Ref[Hole]):
        shape: Ref[Literal['round', 'oval', 'D']]
        along: Ref[Mm]
        across: Ref[Mm]
        corner: Ref[Mm]
        is_round: Ref[bool]
        diameter: Ref[Mm]
        hydraulic_radius: Ref[Mm]
        tightest: Ref[Mm]

    class TimberRef(Ref[Timber]):
        longitudinal: Ref[float]
        radial: Ref[float]
        tangential: Ref[float]
        shear_lr: Ref[float]
        shear_lt: Ref[float]
        shear_rt: Ref[float]
        poisson_lr: Ref[float]
        poisson_lt: Ref[float]
        density: Ref[float]

    class EdgeBevelRef(Ref[EdgeBevel]):
        side: UnrolledSideRef
        upper: Ref[bool]
        over: Ref[Mm]
        width: Ref[Mm]
        drop: Ref[Mm]
        length: Ref[Mm]
        middle: Ref[Mm]
        start: Ref[Mm]
        stop: Ref[Mm]
        face_length: Ref[Mm]
        wall_length: Ref[Mm]
        tightest: Ref[float]

    class DomeRef(Ref[Dome]):
        curvature: Ref[PerMm]
        apex_x: Ref[Mm]
        apex_y: Ref[Mm]

    class ProfileRef(Ref[Profile]):
        half_width: Ref[Mm]
        depth: Ref[Mm]
        exponent: Ref[Ratio]
        other_exponent: Ref[Ratio]
        mix: Ref[Ratio]
        area: Ref[Mm2]

    class BigFigureRef(Ref[BigFigure]):
        figure: Ref[Any]
        what: Ref[Any]
        tolerance: Ref[Any]
        measured_with: Ref[Any]

    class TableRef(Ref[Table]):
        title: Ref[Any]
        columns: Members[Ref[Any], Any]
        rows: Ref[Any]
        row_name: Ref[str]
        both_units: Ref[bool]
        numbered: Ref[bool]

    class GapRef(Ref[Gap]):
        along: Ref[float]
        width: Ref[float]
        low: Ref[float]
        high: Ref[float]
        glued: Ref[bool]

    class FaultRef(Ref[Fault]):
        line: Ref[Any]
        where: Ref[str]
        what: Ref[str]
        why: Ref[str]
        remedy: Ref[str]
        file: Ref[Any]

    air_humidity: Ref[Percent]
    air_known: Ref[bool]
    air_pieces: Members[WoodStateRef, WoodState]
    air_pieces_unknown: Members[Ref[str], str]
    air_place: Ref[str]
    air_read_at: Ref[str]
    air_temperature: Ref[Celsius]
    air_unknown_because: Ref[str]
    arm_bevel_binding: Ref[Literal['stops', 'plate', 'side', 'both']]
    arm_bevel_block: Ref[Literal['solid', 'laminated']]
    arm_bevel_block_height: Ref[Mm]
    arm_bevel_block_width: Ref[Mm]
    arm_bevel_drop: Ref[Mm]
    arm_bevel_layer: Ref[Mm]
    arm_bevel_length: Ref[Mm]
    arm_bevel_place: Ref[Mm]
    arm_bevel_veneer: Ref[Mm]
    arm_bevel_veneer_wood: Ref[str]
    arm_bevel_width: Ref[Mm]
    back_binding_height: Ref[Mm]
    back_binding_material: Ref[str]
    back_binding_purfling: Ref[Mm]
    back_binding_purfling_depth: Ref[Mm]
    back_binding_thickness: Ref[Mm]
    back_binding_wood: Ref[str]
    binding_material: Ref[str]
    binding_purfling: Ref[Mm]
    binding_tail: Ref[bool]
    binding_thickness: Ref[Mm]
    binding_wood: Ref[str]
    board_beyond_last_fret: Ref[Mm]
    board_curvature_end: Ref[PerMm]
    board_curvature_nut: Ref[PerMm]
    board_edge_nut_bass: Ref[Mm]
    board_edge_nut_treble: Ref[Mm]
    board_edge_tail_bass: Ref[Mm]
    board_edge_tail_treble: Ref[Mm]
    board_level_underside: Ref[bool]
    board_modulus: Ref[MPa]
    board_modulus_known: Ref[bool]
    board_movement_radial: Ref[float]
    board_movement_tangential: Ref[float]
    board_thickness: Ref[Mm]
    board_width: Ref[Mm]
    board_width_station: StationRef
    board_wood: Ref[str]
    body_alike: Ref[Mm]
    body_back_radius: Ref[Mm]
    body_back_thickness: Ref[Mm]
    body_beyond_join: Ref[Mm]
    body_clearance: Ref[Mm]
    body_depth_neck: Ref[Mm]
    body_depth_tail: Ref[Mm]
    body_layer: Ref[str]
    body_linings: Ref[Mm]
    body_linings_height: Ref[Mm]
    body_mould_wall: Ref[Mm]
    body_neck_block: Ref[Mm]
    body_neck_block_width: Ref[Mm]
    body_outlines: Members[OutlineRef, Outline]
    body_plate_allowance: Ref[Mm]
    body_side_allowance: Ref[Mm]
    body_side_over: Ref[Mm]
    body_side_wood: Ref[str]
    body_tail_block: Ref[Mm]
    body_tail_block_width: Ref[Mm]
    body_wall: Ref[Mm]
    braces_asked: Members[BraceAskedRef, BraceAsked]
    bridge_front: Ref[Mm]
    bridge_front_row: Ref[Literal['treble string', 'bass string']]
    bridge_hold: Ref[Literal['pins', 'tie block']]
    bridge_hold_behind: Ref[Mm]
    bridge_hold_below: Ref[Mm]
    bridge_hold_line: Ref[Literal['along the bridge', 'along the saddle']]
    bridge_hold_spread: Ref[Mm]
    bridge_length: Ref[Mm]
    bridge_pair: Ref[Mm]
    bridge_pair_by: Ref[Literal['centres', 'gap']]
    bridge_pin_diameter: Ref[Mm]
    bridge_plate_ahead: Ref[Mm]
    bridge_plate_behind: Ref[Mm]
    bridge_plate_lean: Ref[Radians]
    bridge_plate_length_back: Ref[Mm]
    bridge_plate_length_front: Ref[Mm]
    bridge_plate_thickness: Ref[Mm]
    bridge_plate_wood: Ref[str]
    bridge_rows: Ref[Literal['one', 'two', 'staggered']]
    bridge_rows_apart: Ref[Mm]
    bridge_spacing: Ref[Literal['equal centres', 'equal gaps']]
    bridge_spread: Ref[Mm]
    bridge_thickness: Ref[Mm]
    bridge_width: Ref[Mm]
    carve_blend_at_1: Ref[Ratio]
    carve_blend_at_10: Ref[Ratio]
    carve_blend_exponent: Ref[Ratio]
    carve_ears: Ref[bool]
    carve_exponent_at_1: Ref[Ratio]
    carve_exponent_at_10: Ref[Ratio]
    carve_facets: Ref[Count]
    carve_foot_toe: Ref[Mm]
    carve_foot_toe_height: Ref[Mm]
    carve_heel: Ref[Literal['stacked', 'solid', 'built on']]
    carve_heel_cap: Ref[Mm]
    carve_heel_length: Ref[Mm]
    carve_heel_width: Ref[Mm]
    carve_rod_access: Ref[Literal['head', 'soundhole']]
    carve_rod_clear: Ref[Mm]
    carve_rod_length: Ref[Mm]
    carve_rod_pocket: Ref[Mm]
    carve_rod_pocket_width: Ref[Mm]
    carve_scarf: Ref[Literal['on the head', 'under the board', 'one piece']]
    carve_slot_room: Ref[Mm]
    carve_slots_apart: Ref[Mm]
    carve_station_frets: Members[Ref[float], float]
    carve_tenon: Ref[Mm]
    carve_wood: Ref[str]
    cutaway_depth: Ref[Mm]
    cutaway_heel: Ref[Mm]
    cutaway_horn: Ref[Mm]
    cutaway_radius: Ref[Mm]
    head_angle: Ref[Radians]
    head_blank: Ref[Mm]
    head_curve: HeadCurveRef
    head_hole: Ref[Mm]
    head_layer: Ref[str]
    head_nut_thickness: Ref[Mm]
    head_post_height: Ref[Mm]
    head_posts_x: Rows
    head_posts_y: Rows
    head_slot_width: Ref[Mm]
    head_thickness: Ref[Mm]
    head_tuners: Ref[Literal['upright', 'across']]
    head_veneer: Ref[Mm]
    heights_action_bass: Ref[Mm]
    heights_action_treble: Ref[Mm]
    heights_body_rise: Ref[Mm]
    heights_dressing_loss: Ref[Mm]
    heights_nut_bass: Ref[Mm]
    heights_nut_over: Ref[Literal['fret 1', 'the zero line']]
    heights_nut_treble: Ref[Mm]
    heights_relief: Ref[Mm]
    instrument_build: Ref[Literal['neck to body', 'on the neck']]
    instrument_handed: Ref[Literal['right', 'left']]
    instrument_name: Ref[str]
    instrument_units: Ref[Literal['mm', 'in']]
    intonation_file_to: Ref[Mm]
    intonation_finger_offset: Ref[Mm]
    intonation_from_fret: Ref[Count]
    intonation_nut: Ref[Literal['none', 'straight', 'per string']]
    intonation_nut_given: Rows
    intonation_pair: Ref[Literal['two break points', 'one break point']]
    intonation_saddle: Ref[Literal['straight', 'slanted', 'per string']]
    intonation_to_fret: Ref[Count]
    limit_action_bass_least: Ref[Mm]
    limit_action_bass_most: Ref[Mm]
    limit_action_treble_least: Ref[Mm]
    limit_action_treble_most: Ref[Mm]
    limit_air_share_least: Ref[Ratio]
    limit_air_share_most: Ref[Ratio]
    limit_back_bow: Ref[Mm]
    limit_bead_bite_caution: Ref[Mm]
    limit_bead_bite_stop: Ref[Mm]
    limit_bead_share_most: Ref[Ratio]
    limit_behind_channel: Ref[Mm]
    limit_bend_radius: Ref[Mm]
    limit_bend_ratio: Ref[Ratio]
    limit_bend_ratio_least: Ref[Ratio]
    limit_beside_rod: Ref[Mm]
    limit_bevel_steepest: Ref[Radians]
    limit_binding_cover: Ref[Mm]
    limit_binding_proud_least: Ref[Mm]
    limit_binding_proud_most: Ref[Mm]
    limit_binding_step: Ref[Mm]
    limit_block_misfit: Ref[Mm]
    limit_body_rise_least: Ref[Mm]
    limit_body_rise_most: Ref[Mm]
    limit_brace_room: Ref[Mm]
    limit_brace_to_hole: Ref[Mm]
    limit_break_angle_least: Ref[Radians]
    limit_break_angle_most: Ref[Radians]
    limit_break_angle_saddle: Ref[Radians]
    limit_break_angle_saddle_least: Ref[Radians]
    limit_breaking_reserve: Ref[Ratio]
    limit_breaking_reserve_least: Ref[Ratio]
    limit_bridge_width_share: Ref[Ratio]
    limit_carve_stations: Ref[Ratio]
    limit_cents_rms: Ref[Cents]
    limit_cents_worst: Ref[Cents]
    limit_channel_lean: Ref[Mm]
    limit_clearance_least: Ref[Mm]
    limit_clearance_most: Ref[Mm]
    limit_core_least: Ref[Mm]
    limit_core_share: Ref[Ratio]
    limit_crest_loss_least: Ref[Mm]
    limit_crest_loss_most: Ref[Mm]
    limit_crossing_room: Ref[Mm]
    limit_crown_least: Ref[Mm]
    limit_dome_change_kept_least: Ref[Ratio]
    limit_edge_margin: Ref[Mm]
    limit_edge_uneven: Ref[Mm]
    limit_exposed_least: Ref[Mm]
    limit_exposed_most: Ref[Mm]
    limit_exposed_stop_least: Ref[Mm]
    limit_exposed_stop_most: Ref[Mm]
    limit_fit_loosest: Ref[Mm]
    limit_fit_tightest: Ref[Mm]
    limit_gluing_humidity: Ref[Percent]
    limit_gluing_humidity_least: Ref[Percent]
    limit_gluing_humidity_most: Ref[Percent]
    limit_head_beside: Ref[Mm]
    limit_head_beyond: Ref[Mm]
    limit_heel_wedge: Ref[Mm]
    limit_hole_edge: Ref[Mm]
    limit_holes_apart: Ref[Mm]
    limit_lining_under: Ref[Mm]
    limit_modulus_least: Ref[Ratio]
    limit_modulus_most: Ref[Ratio]
    limit_neck_angle_least: Ref[Radians]
    limit_neck_angle_most: Ref[Radians]
    limit_nip_back: Ref[Mm]
    limit_nut_first_least: Ref[Mm]
    limit_nut_first_most: Ref[Mm]
    limit_nut_gain: Ref[Cents]
    limit_nut_slot_room: Ref[Mm]
    limit_nut_slot_share: Ref[Ratio]
    limit_opening_room: Ref[Mm]
    limit_over_rod: Ref[Mm]
    limit_over_top_least: Ref[Mm]
    limit_over_top_most: Ref[Mm]
    limit_owner_humidity_least: Ref[Percent]
    limit_owner_humidity_most: Ref[Percent]
    limit_owner_temperature: Ref[Celsius]
    limit_pair_least: Ref[Mm]
    limit_pair_most: Ref[Mm]
    limit_pilot_least: Ref[Mm]
    limit_pin_room: Ref[Mm]
    limit_pin_spacing: Ref[Ratio]
    limit_pin_spacing_least: Ref[Ratio]
    limit_pin_to_saddle: Ref[Mm]
    limit_plank_over: Ref[Mm]
    limit_plate_glued: Ref[Mm]
    limit_plate_glued_least: Ref[Mm]
    limit_plate_to_leg: Ref[Mm]
    limit_plate_under_pin: Ref[Mm]
    limit_port_bend: Ref[Mm]
    limit_port_room: Ref[Mm]
    limit_pull_least: Ref[Newton]
    limit_pull_uneven: Ref[Ratio]
    limit_relief_least: Ref[Mm]
    limit_relief_most: Ref[Mm]
    limit_rip_kerf: Ref[Mm]
    limit_rod_blind: Ref[Mm]
    limit_rod_reach: Ref[Mm]
    limit_rod_short: Ref[Mm]
    limit_saddle_edge: Ref[Mm]
    limit_saddle_place: Ref[Mm]
    limit_saddle_shows: Ref[Ratio]
    limit_side_between: Ref[Mm]
    limit_side_under_bevel: Ref[Mm]
    limit_sideways_bend: Ref[Radians]
    limit_single_strings: Ref[Ratio]
    limit_slot_error_cents: Ref[Cents]
    limit_slot_position: Ref[Mm]
    limit_slot_room: Ref[Mm]
    limit_sprout: Ref[Mm]
    limit_string_error_cents: Ref[Cents]
    limit_string_hump: Ref[Mm]
    limit_string_to_pin: Ref[Mm]
    limit_string_to_post: Ref[Mm]
    limit_strip_over: Ref[Mm]
    limit_tolerance_angle: Ref[Radians]
    limit_tolerance_bridge: Ref[Mm]
    limit_tolerance_fit: Ref[Mm]
    limit_tolerance_height: Ref[Mm]
    limit_tolerance_outline: Ref[Mm]
    limit_tolerance_radius: Ref[Mm]
    limit_tolerance_width: Ref[Mm]
    limit_tongue_gap: Ref[Mm]
    limit_top_creep_least: Ref[Ratio]
    limit_top_creep_most: Ref[Ratio]
    limit_top_strain_most: Ref[Ratio]
    limit_top_turn_least: Ref[Radians]
    limit_top_turn_most: Ref[Radians]
    limit_torque_least: Ref[NewtonM]
    limit_torque_most: Ref[NewtonM]
    limit_torque_of_second: Ref[Ratio]
    limit_under_purfling: Ref[Mm]
    limit_under_rod: Ref[Mm]
    limit_under_saddle_slot: Ref[Mm]
    limit_under_slot: Ref[Mm]
    limit_under_slot_least: Ref[Mm]
    limit_veneer_over: Ref[Mm]
    limit_wedge_kept_least: Ref[Ratio]
    limit_wedge_kept_most: Ref[Ratio]
    limit_wing_off_leg: Ref[Mm]
    limit_wire_bend_ratio: Ref[Ratio]
    limit_wire_extra: Ref[Mm]
    limit_wire_spare: Ref[Ratio]
    limit_zero_fret_drop: Ref[Mm]
    markers_diameter: Ref[Mm]
    markers_double: Members[Ref[int], int]
    markers_face: Ref[bool]
    markers_frets: Members[Ref[int], int]
    markers_side_diameter: Ref[Mm]
    neck_bar_depth: Ref[Mm]
    neck_bar_modulus: Ref[MPa]
    neck_bar_width: Ref[Mm]
    neck_bars: Ref[Count]
    neck_depth_first: Ref[Mm]
    neck_depth_tenth: Ref[Mm]
    neck_heel_depth: Ref[Mm]
    neck_modulus: Ref[MPa]
    neck_modulus_known: Ref[bool]
    neck_rod: Ref[Literal['none', 'one way', 'two way']]
    neck_rod_depth: Ref[Mm]
    neck_rod_width: Ref[Mm]
    neck_straightedge: Ref[Mm]
    nut_behind: Ref[Mm]
    nut_pair: Ref[Mm]
    nut_pair_by: Ref[Literal['centres', 'gap']]
    nut_set_forward: Ref[Mm]
    nut_spacing: Ref[Literal['equal gaps', 'equal centres']]
    nut_spread: Ref[Mm]
    nut_width: Ref[Mm]
    openings_asked: Members[OpeningAskedRef, OpeningAsked]
    ports_asked: Members[PortAskedRef, PortAsked]
    repair_bridge: Ref[Literal['stays', 'reglued', 'moved']]
    repair_described: Ref[bool]
    repair_nut: Ref[bool]
    repair_refret: Ref[bool]
    repair_reset: Ref[bool]
    repair_saddle: Ref[bool]
    rib_bevel_binding: Ref[Literal['stops', 'plate', 'side', 'both']]
    rib_bevel_block: Ref[Literal['solid', 'laminated']]
    rib_bevel_block_height: Ref[Mm]
    rib_bevel_block_width: Ref[Mm]
    rib_bevel_drop: Ref[Mm]
    rib_bevel_layer: Ref[Mm]
    rib_bevel_length: Ref[Mm]
    rib_bevel_place: Ref[Mm]
    rib_bevel_veneer: Ref[Mm]
    rib_bevel_veneer_wood: Ref[str]
    rib_bevel_width: Ref[Mm]
    rosette_asked: Members[RingAskedRef, RingAsked]
    saddle_beyond: Ref[Mm]
    saddle_exposed: Ref[Mm]
    saddle_set_back_given: Rows
    saddle_slot_depth: Ref[Mm]
    saddle_thickness: Ref[Mm]
    scale_bass: Ref[Mm]
    scale_cents: Rows
    scale_frets: Ref[Count]
    scale_join: Ref[Ratio]
    scale_sideways: Ref[Mm]
    scale_square_at: Ref[Ratio]
    scale_square_at_cents: Ref[Cents]
    scale_temperament: Ref[str]
    scale_treble: Ref[Mm]
    scale_zero_fret: Ref[bool]
    shop_allowance_length: Ref[Mm]
    shop_allowance_side: Ref[Mm]
    shop_blanks: Members[BlankRef, Blank]
    shop_blocks: Members[BlockRef, Block]
    shop_cutters: Members[CutterRef, Cutter]
    shop_is_default: Ref[bool]
    shop_jigs: Members[JigRef, Jig]
    shop_kept: Members[KeptPieceRef, KeptPiece]
    shop_laser_kerf: Ref[Mm]
    shop_laser_kerf_in: Ref[Literal['the drawing', 'the machine']]
    shop_layers: Members[LayerInkRef, LayerInk]
    shop_name: Ref[str]
    shop_paper: Ref[str]
    shop_pin_clearance: Ref[Mm]
    shop_pin_offset: Ref[Mm]
    shop_router_kerf: Ref[Mm]
    shop_router_kerf_in: Ref[Literal['the drawing', 'the machine']]
    shop_saws: Members[SawRef, Saw]
    shop_sheet_paper: Ref[str]
    shop_temperature: Ref[Literal['C', 'F']]
    shop_template_pin: Ref[Mm]
    shop_template_thickness: Ref[Mm]
    shop_templates: Members[IndexTemplateRef, IndexTemplate]
    shop_units: Ref[Literal['mm', 'in']]
    shop_wires: Members[WireRef, Wire]
    slots_bottom: Ref[Literal['straight', 'follows the arch']]
    slots_clearance: Ref[Mm]
    slots_crest_loss: Ref[Mm]
    slots_cut: Ref[Literal['before arching', 'after arching']]
    slots_saw: Ref[str]
    soundhole_across: Ref[Mm]
    soundhole_along: Ref[Mm]
    soundhole_aside: Ref[Mm]
    soundhole_corner: Ref[Mm]
    soundhole_diameter: Ref[Mm]
    soundhole_given: Ref[Mm]
    soundhole_held_to: Ref[Literal['body', 'join', 'tail', 'saddle']]
    soundhole_lean: Ref[Radians]
    soundhole_shape: Ref[Literal['round', 'oval', 'D']]
    strings_a4: Ref[Hertz]
    strings_bending: Rows
    strings_core: Ref[str]
    strings_cores: Rows
    strings_count: Ref[Count]
    strings_course: Rows
    strings_frequency: Rows
    strings_gauges: Rows
    strings_plain: Ref[str]
    strings_single: Ref[bool]
    strings_stretch: Rows
    strings_weights: Rows
    strings_wound: Rows
    strings_wrap: Ref[str]
    stuff_list: Members[StuffRef, Stuff]
    timber_back: TimberKnownRef
    timber_board: TimberKnownRef
    timber_braces: TimberKnownRef
    timber_bridge: TimberKnownRef
    timber_bridge_plate: TimberKnownRef
    timber_neck: TimberKnownRef
    timber_pushes: Members[PushRef, Push]
    timber_top: TimberKnownRef
    timber_tried: Members[TriedRef, Tried]
    top_binding_height: Ref[Mm]
    top_binding_material: Ref[str]
    top_binding_purfling: Ref[Mm]
    top_binding_purfling_depth: Ref[Mm]
    top_binding_thickness: Ref[Mm]
    top_binding_wood: Ref[str]
    top_brace_height: Ref[Mm]
    top_brace_modulus: Ref[MPa]
    top_brace_spacing: Ref[Mm]
    top_brace_width: Ref[Mm]
    top_brace_wood: Ref[str]
    top_edge_run: Ref[Mm]
    top_edge_thickness: Ref[Mm]
    top_length: Ref[Mm]
    top_modulus_across: Ref[MPa]
    top_movement_radial: Ref[float]
    top_radius: Ref[Mm]
    top_rise: Ref[Mm]
    top_thickness: Ref[Mm]
    top_wood: Ref[str]
    wire_bead_thickness: Ref[Mm]
    wire_crown_height: Ref[Mm]
    wire_crown_width: Ref[Mm]
    wire_name: Ref[str]
    wire_on_hand: Ref[Mm]
    wire_tang_depth: Ref[Mm]
    wire_tang_thickness: Ref[Mm]
    work_back_strip: Ref[bool]
    work_end_pin: Ref[Literal['fitted', 'none']]
    work_finish: Ref[Literal['lacquer', 'shellac', 'oil']]
    work_head_mark: Ref[bool]
    work_heel_cap: Ref[bool]
    work_linings: Ref[Literal['bought', 'made here']]
    work_neck_joint: Ref[Literal['glued', 'bolted', 'dowelled', 'built on']]
    work_neck_set: Ref[Literal['after the finish', 'before the finish']]
    work_side_strips: Ref[Literal['between the linings', 'before the linings', 'none']]
    work_wood: Ref[Literal['new', 'settled']]

    # drawings/bevels.py
    piece_bevels_on_face: Members[Ref[Any], Any] = of(drawings_bevels.piece_bevels_on_face)
    piece_bevels_on_back: Members[Ref[Any], Any] = of(drawings_bevels.piece_bevels_on_back)
    piece_bevels_on_side: Members[Ref[Any], Any] = of(drawings_bevels.piece_bevels_on_side)
    drawing_bevel_arm: DrawingRef = of(drawings_bevels.drawing_bevel_arm)
    drawing_bevel_rib: DrawingRef = of(drawings_bevels.drawing_bevel_rib)

    # drawings/board.py
    piece_board: Members[Ref[Any], Any] = of(drawings_board.piece_board)
    piece_furniture: Members[Ref[Any], Any] = of(drawings_board.piece_furniture)
    piece_words: Members[Ref[Any], Any] = of(drawings_board.piece_words)
    drawing_board: DrawingRef = of(drawings_board.drawing_board)

    # drawings/body.py
    piece_body_outline: Members[Ref[Any], Any] = of(drawings_body.piece_body_outline)
    piece_binding_lines: Members[Ref[Any], Any] = of(drawings_body.piece_binding_lines)
    piece_bridge_on_body: Members[Ref[Any], Any] = of(drawings_body.piece_bridge_on_body)
    piece_saddle_on_body: Members[Ref[Any], Any] = of(drawings_body.piece_saddle_on_body)
    piece_braces_hidden: Members[Ref[Any], Any] = of(drawings_body.piece_braces_hidden)
    piece_body_blocks: Members[Ref[Any], Any] = of(drawings_body.piece_body_blocks)
    piece_body_sizes: Members[Ref[Any], Any] = of(drawings_body.piece_body_sizes)
    piece_face_plan: Members[Ref[Any], Any] = of(drawings_body.piece_face_plan)
    drawing_mould: DrawingRef = of(drawings_body.drawing_mould)

    # drawings/bracing.py
    piece_plan_top: Members[Ref[Any], Any] = of(drawings_bracing.piece_plan_top)
    piece_plan_back: Members[Ref[Any], Any] = of(drawings_bracing.piece_plan_back)
    piece_face_numbers: Members[Ref[Any], Any] = of(drawings_bracing.piece_face_numbers)
    piece_list_top: Members[Ref[Any], Any] = of(drawings_bracing.piece_list_top)
    piece_list_back: Members[Ref[Any], Any] = of(drawings_bracing.piece_list_back)
    drawing_top_inside: DrawingRef = of(drawings_bracing.drawing_top_inside)
    drawing_back_inside: DrawingRef = of(drawings_bracing.drawing_back_inside)
    drawing_braces: DrawingRef = of(drawings_bracing.drawing_braces)

    # drawings/bridge.py
    piece_bridge: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge)
    piece_saddle_slot: Members[Ref[Any], Any] = of(drawings_bridge.piece_saddle_slot)
    piece_break_points: Members[Ref[Any], Any] = of(drawings_bridge.piece_break_points)
    piece_scale_ends: Members[Ref[Any], Any] = of(drawings_bridge.piece_scale_ends)
    piece_hold: Members[Ref[Any], Any] = of(drawings_bridge.piece_hold)
    piece_bridge_strings: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_strings)
    piece_bridge_lines: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_lines)
    piece_bridge_sizes: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_sizes)
    piece_bridge_words: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_words)
    piece_set_backs: Members[Ref[Any], Any] = of(drawings_bridge.piece_set_backs)
    drawing_bridge: DrawingRef = of(drawings_bridge.drawing_bridge)
    piece_bridge_run: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_run)
    piece_bridge_figures: Members[Ref[Any], Any] = of(drawings_bridge.piece_bridge_figures)

    # drawings/carve.py
    piece_gauge_cards: Members[Ref[Any], Any] = of(drawings_carve.piece_gauge_cards)
    drawing_neck_gauges: DrawingRef = of(drawings_carve.drawing_neck_gauges)
    piece_facets: Members[Ref[Any], Any] = of(drawings_carve.piece_facets)
    drawing_neck_facets: DrawingRef = of(drawings_carve.drawing_neck_facets)
    piece_flats_scale: Ref[Ratio] = of(drawings_carve.piece_flats_scale)
    drawing_setup_neck_carve: DrawingRef = of(drawings_carve.drawing_setup_neck_carve)
    piece_setup_flats: Members[Ref[Any], Any] = of(drawings_carve.piece_setup_flats)

    # drawings/face_plan.py
    piece_body_places: Members[Ref[Any], Any] = of(drawings_face_plan.piece_body_places)
    piece_face_words: Members[Ref[Any], Any] = of(drawings_face_plan.piece_face_words)
    piece_title_block: Members[Ref[Any], Any] = of(drawings_face_plan.piece_title_block)
    piece_face_told: Members[Ref[Any], Any] = of(drawings_face_plan.piece_face_told)
    drawing_face_plan: DrawingRef = of(drawings_face_plan.drawing_face_plan)
    piece_face_lines: Members[Ref[Any], Any] = of(drawings_face_plan.piece_face_lines)
    piece_face_sizes: Members[Ref[Any], Any] = of(drawings_face_plan.piece_face_sizes)
    piece_face_beside: Members[Ref[Any], Any] = of(drawings_face_plan.piece_face_beside)

    # drawings/foot.py
    piece_foot_side: Members[Ref[Any], Any] = of(drawings_foot.piece_foot_side)
    piece_slots_on_face: Members[Ref[Any], Any] = of(drawings_foot.piece_slots_on_face)
    piece_foot_on_face: Members[Ref[Any], Any] = of(drawings_foot.piece_foot_on_face)
    piece_side_place: Ref[Any] = of(drawings_foot.piece_side_place)
    piece_slots_from_side: Members[Ref[Any], Any] = of(drawings_foot.piece_slots_from_side)
    piece_slot_figures: Members[Ref[Any], Any] = of(drawings_foot.piece_slot_figures)
    piece_foot_figures: Members[Ref[Any], Any] = of(drawings_foot.piece_foot_figures)
    drawing_heel_slots: DrawingRef = of(drawings_foot.drawing_heel_slots)
    piece_build_board: Members[Ref[Any], Any] = of(drawings_foot.piece_build_board)
    piece_build_board_figures: Members[Ref[Any], Any] = of(drawings_foot.piece_build_board_figures)
    drawing_build_board: DrawingRef = of(drawings_foot.drawing_build_board)

    # drawings/gauges.py
    piece_arch_cards: Members[Ref[Any], Any] = of(drawings_gauges.piece_arch_cards)
    piece_depth_cards: Members[Ref[Any], Any] = of(drawings_gauges.piece_depth_cards)
    piece_gap_cards: Members[Ref[Any], Any] = of(drawings_gauges.piece_gap_cards)
    drawing_gauges: DrawingRef = of(drawings_gauges.drawing_gauges)

    # drawings/guitar.py
    piece_plan_body: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_body)
    piece_plan_head: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_head)
    piece_plan_sizes: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_sizes)
    piece_plan_face: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_face)
    drawing_plan_face: DrawingRef = of(drawings_guitar.drawing_plan_face)
    piece_plan_turned: Ref[Any] = of(drawings_guitar.piece_plan_turned)
    piece_plan_rims: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_rims)
    piece_plan_board: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_board)
    piece_plan_strings: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_strings)
    piece_plan_bridge: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_bridge)
    piece_plan_side_sizes: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_side_sizes)
    piece_plan_neck_side: Members[Ref[Any], Any] = of(drawings_guitar.piece_plan_neck_side)
    drawing_plan_side: DrawingRef = of(drawings_guitar.drawing_plan_side)
    piece_cuts: Members[Ref[Any], Any] = of(drawings_guitar.piece_cuts)
    piece_cut_strings: Members[Ref[Any], Any] = of(drawings_guitar.piece_cut_strings)
    drawing_plan_sections: DrawingRef = of(drawings_guitar.drawing_plan_sections)

    # drawings/head.py
    piece_head_edge: Members[Ref[Any], Any] = of(drawings_head.piece_head_edge)
    piece_tuners: Members[Ref[Any], Any] = of(drawings_head.piece_tuners)
    piece_head_strings: Members[Ref[Any], Any] = of(drawings_head.piece_head_strings)
    piece_head_lines: Members[Ref[Any], Any] = of(drawings_head.piece_head_lines)
    piece_tuner_sizes: Members[Ref[Any], Any] = of(drawings_head.piece_tuner_sizes)
    piece_tuner_list: Members[Ref[Any], Any] = of(drawings_head.piece_tuner_list)
    piece_slot_sizes: Members[Ref[Any], Any] = of(drawings_head.piece_slot_sizes)
    drawing_head: DrawingRef = of(drawings_head.drawing_head)
    drawing_setup_neck_head: DrawingRef = of(drawings_head.drawing_setup_neck_head)

    # drawings/heights.py
    piece_turned: TurnedRef = of(drawings_heights.piece_turned)
    piece_set_board: Members[Ref[Any], Any] = of(drawings_heights.piece_set_board)
    piece_set_frets: Members[Ref[Any], Any] = of(drawings_heights.piece_set_frets)
    piece_set_body: Members[Ref[Any], Any] = of(drawings_heights.piece_set_body)
    piece_set_bridge: Members[Ref[Any], Any] = of(drawings_heights.piece_set_bridge)
    piece_set_lines: Members[Ref[Any], Any] = of(drawings_heights.piece_set_lines)
    piece_set_figures: Members[Ref[Any], Any] = of(drawings_heights.piece_set_figures)
    drawing_neck_set: DrawingRef = of(drawings_heights.drawing_neck_set)
    piece_strung: Ref[Any] = of(drawings_heights.piece_strung)
    piece_strung_tall: Ref[float] = of(drawings_heights.piece_strung_tall)
    piece_strung_lines: Members[Ref[Any], Any] = of(drawings_heights.piece_strung_lines)
    piece_strung_drop: Ref[Mm] = of(drawings_heights.piece_strung_drop)
    piece_strung_figures: Members[Ref[Any], Any] = of(drawings_heights.piece_strung_figures)
    drawing_heights: DrawingRef = of(drawings_heights.drawing_heights)

    # drawings/index_template.py
    piece_rail: RailRef = of(drawings_index_template.piece_rail)
    piece_notches: NotchesRef = of(drawings_index_template.piece_notches)
    piece_rail_cut: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_cut)
    piece_rail_holes: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_holes)
    piece_rail_board: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_board)
    piece_rail_numbers: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_numbers)
    piece_rail_proof: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_proof)
    piece_rail_words: Members[Ref[Any], Any] = of(drawings_index_template.piece_rail_words)
    piece_template: Members[Ref[Any], Any] = of(drawings_index_template.piece_template)
    piece_lines_instead: Members[Ref[Any], Any] = of(drawings_index_template.piece_lines_instead)
    drawing_index_template: DrawingRef = of(drawings_index_template.drawing_index_template)

    # drawings/machines.py
    piece_laser: MachineRef = of(drawings_machines.piece_laser)
    piece_router: MachineRef = of(drawings_machines.piece_router)

    # drawings/neck.py
    piece_side_board: Members[Ref[Any], Any] = of(drawings_neck.piece_side_board)
    piece_side_shaft: Members[Ref[Any], Any] = of(drawings_neck.piece_side_shaft)
    piece_side_heel: Members[Ref[Any], Any] = of(drawings_neck.piece_side_heel)
    piece_side_foot: Members[Ref[Any], Any] = of(drawings_neck.piece_side_foot)
    piece_leaning: LeaningRef = of(drawings_neck.piece_leaning)
    piece_side_head: Members[Ref[Any], Any] = of(drawings_neck.piece_side_head)
    piece_side_strings: Members[Ref[Any], Any] = of(drawings_neck.piece_side_strings)
    piece_side_figures: Members[Ref[Any], Any] = of(drawings_neck.piece_side_figures)
    piece_head_figures: Members[Ref[Any], Any] = of(drawings_neck.piece_head_figures)
    drawing_neck: DrawingRef = of(drawings_neck.drawing_neck)
    piece_neck_figures: Members[Ref[Any], Any] = of(drawings_neck.piece_neck_figures)
    piece_nut_places: Members[Ref[float], float] = of(drawings_neck.piece_nut_places)
    piece_nut_ends: Ref[Any] = of(drawings_neck.piece_nut_ends)
    piece_nut_rule: Members[Ref[Any], Any] = of(drawings_neck.piece_nut_rule)
    drawing_nut: DrawingRef = of(drawings_neck.drawing_nut)
    piece_nut_face: Members[Ref[Any], Any] = of(drawings_neck.piece_nut_face)
    piece_nut_front: Members[Ref[Any], Any] = of(drawings_neck.piece_nut_front)
    drawing_setup_nut: DrawingRef = of(drawings_neck.drawing_setup_nut)

    # drawings/neck_plank.py
    piece_leaning_head: LeaningHeadRef = of(drawings_neck_plank.piece_leaning_head)
    piece_neck_line: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_neck_line)
    piece_carved: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_carved)
    piece_plank: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_plank)
    piece_heel_blocks: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_heel_blocks)
    piece_rod: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_rod)
    piece_plank_sizes: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_plank_sizes)
    drawing_neck_plank: DrawingRef = of(drawings_neck_plank.drawing_neck_plank)
    piece_stock: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_stock)
    piece_cut_list: Members[Ref[Any], Any] = of(drawings_neck_plank.piece_cut_list)
    drawing_setup_neck_blank: DrawingRef = of(drawings_neck_plank.drawing_setup_neck_blank)
    drawing_setup_neck_scarf: DrawingRef = of(drawings_neck_plank.drawing_setup_neck_scarf)
    drawing_setup_neck_rod: DrawingRef = of(drawings_neck_plank.drawing_setup_neck_rod)

    # drawings/openings.py
    piece_openings: Members[Ref[Any], Any] = of(drawings_openings.piece_openings)
    piece_soundhole: Members[Ref[Any], Any] = of(drawings_openings.piece_soundhole)
    piece_further_holes: Members[Ref[Any], Any] = of(drawings_openings.piece_further_holes)
    piece_openings_sizes: Members[Ref[Any], Any] = of(drawings_openings.piece_openings_sizes)
    drawing_openings: DrawingRef = of(drawings_openings.drawing_openings)

    # drawings/plan.py
    piece_outline: Members[Ref[Any], Any] = of(drawings_plan.piece_outline)
    piece_slots: Members[Ref[Any], Any] = of(drawings_plan.piece_slots)
    piece_zero_line: Members[Ref[Any], Any] = of(drawings_plan.piece_zero_line)
    piece_strings: Members[Ref[Any], Any] = of(drawings_plan.piece_strings)
    piece_markers: Members[Ref[Any], Any] = of(drawings_plan.piece_markers)
    piece_side_dots: Members[Ref[Any], Any] = of(drawings_plan.piece_side_dots)
    piece_pins: Members[Ref[Any], Any] = of(drawings_plan.piece_pins)
    piece_fret_numbers: Members[Ref[Any], Any] = of(drawings_plan.piece_fret_numbers)
    piece_sizes: Members[Ref[Any], Any] = of(drawings_plan.piece_sizes)
    piece_tail_size: Members[Ref[Any], Any] = of(drawings_plan.piece_tail_size)
    piece_head_words: Members[Ref[Any], Any] = of(drawings_plan.piece_head_words)
    piece_side_words: Members[Ref[Any], Any] = of(drawings_plan.piece_side_words)

    # drawings/ports.py
    piece_ports_on_side: Members[Ref[Any], Any] = of(drawings_ports.piece_ports_on_side)
    piece_ports_on_treble: Members[Ref[Any], Any] = of(drawings_ports.piece_ports_on_treble)
    piece_small_ports: Members[Ref[Any], Any] = of(drawings_ports.piece_small_ports)

    # drawings/section.py
    piece_slope: Ref[Ratio] = of(drawings_section.piece_slope)
    piece_bottom: Members[Ref[Any], Any] = of(drawings_section.piece_bottom)
    piece_across: AcrossRef = of(drawings_section.piece_across)
    piece_section_wood: Members[Ref[Any], Any] = of(drawings_section.piece_section_wood)
    piece_section_sizes: Members[Ref[Any], Any] = of(drawings_section.piece_section_sizes)
    drawing_section: DrawingRef = of(drawings_section.drawing_section)

    # drawings/setup_bevels.py
    piece_bevel_sections: Members[Ref[Any], Any] = of(drawings_setup_bevels.piece_bevel_sections)
    drawing_setup_bevels: DrawingRef = of(drawings_setup_bevels.drawing_setup_bevels)

    # drawings/setup_braces.py
    piece_small_braces: Members[Ref[Any], Any] = of(drawings_setup_braces.piece_small_braces)
    drawing_setup_braces: DrawingRef = of(drawings_setup_braces.drawing_setup_braces)

    # drawings/setup_bridge.py
    piece_lying_share: Ref[Ratio] = of(drawings_setup_bridge.piece_lying_share)
    piece_lying_lines: Members[Ref[Any], Any] = of(drawings_setup_bridge.piece_lying_lines)
    piece_lying_sizes: Members[Ref[Any], Any] = of(drawings_setup_bridge.piece_lying_sizes)
    piece_lying_words: Members[Ref[Any], Any] = of(drawings_setup_bridge.piece_lying_words)
    drawing_setup_bridge: DrawingRef = of(drawings_setup_bridge.drawing_setup_bridge)

    # drawings/setup_details.py
    piece_ledge_board: Members[Ref[Any], Any] = of(drawings_setup_details.piece_ledge_board)
    piece_ledge_cutter: Members[Ref[Any], Any] = of(drawings_setup_details.piece_ledge_cutter)
    piece_ledge_sizes: Members[Ref[Any], Any] = of(drawings_setup_details.piece_ledge_sizes)
    drawing_setup_ledge: DrawingRef = of(drawings_setup_details.drawing_setup_ledge)
    piece_kerf: Ref[Mm] = of(drawings_setup_details.piece_kerf)
    piece_wire_board: Members[Ref[Any], Any] = of(drawings_setup_details.piece_wire_board)
    piece_wire_profile: Members[Ref[Any], Any] = of(drawings_setup_details.piece_wire_profile)
    piece_wire_end: Members[Ref[Any], Any] = of(drawings_setup_details.piece_wire_end)
    drawing_setup_wire: DrawingRef = of(drawings_setup_details.drawing_setup_wire)

    # drawings/setup_edges.py
    piece_edge_top: Members[Ref[Any], Any] = of(drawings_setup_edges.piece_edge_top)
    piece_edge_back: Members[Ref[Any], Any] = of(drawings_setup_edges.piece_edge_back)
    drawing_setup_channels: DrawingRef = of(drawings_setup_edges.drawing_setup_channels)

    # drawings/setup_openings.py
    drawing_setup_openings: DrawingRef = of(drawings_setup_openings.drawing_setup_openings)

    # drawings/setup_plans.py
    piece_squeezed: ViewRef = of(drawings_setup_plans.piece_squeezed)
    piece_blank: PolylineRef = of(drawings_setup_plans.piece_blank)
    piece_board_on_blank: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_board_on_blank)
    drawing_setup_blank: DrawingRef = of(drawings_setup_plans.drawing_setup_blank)
    drawing_setup_layout: DrawingRef = of(drawings_setup_plans.drawing_setup_layout)
    piece_layout_lines: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_layout_lines)
    piece_layout_sizes: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_layout_sizes)
    piece_taper_corners: Ref[Any] = of(drawings_setup_plans.piece_taper_corners)
    piece_taper_board: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_taper_board)
    piece_taper_carriage: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_taper_carriage)
    drawing_setup_taper: DrawingRef = of(drawings_setup_plans.drawing_setup_taper)
    piece_marked_fret: Ref[int] = of(drawings_setup_plans.piece_marked_fret)
    drawing_setup_markers: DrawingRef = of(drawings_setup_plans.drawing_setup_markers)
    piece_markers_between: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_markers_between)
    piece_markers_edge: Members[Ref[Any], Any] = of(drawings_setup_plans.piece_markers_edge)

    # drawings/setup_saddle.py
    piece_saddle_share: Ref[Ratio] = of(drawings_setup_saddle.piece_saddle_share)
    piece_saddle_behind: Members[Ref[Any], Any] = of(drawings_setup_saddle.piece_saddle_behind)
    piece_saddle_above: Members[Ref[Any], Any] = of(drawings_setup_saddle.piece_saddle_above)
    piece_saddle_sides: Members[Ref[Any], Any] = of(drawings_setup_saddle.piece_saddle_sides)
    drawing_setup_saddle: DrawingRef = of(drawings_setup_saddle.drawing_setup_saddle)

    # drawings/setup_sections.py
    piece_sawn: SawnRef = of(drawings_setup_sections.piece_sawn)
    piece_across_view: ViewRef = of(drawings_setup_sections.piece_across_view)
    piece_slot_across: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_slot_across)
    piece_slot_along: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_slot_along)
    piece_slot_machine: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_slot_machine)
    drawing_setup_slot: DrawingRef = of(drawings_setup_sections.drawing_setup_slot)
    piece_shallow: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_shallow)
    drawing_setup_deepen: DrawingRef = of(drawings_setup_sections.drawing_setup_deepen)
    piece_arch_nut: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_arch_nut)
    piece_arch_end: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_arch_end)
    drawing_setup_arch: DrawingRef = of(drawings_setup_sections.drawing_setup_arch)
    piece_side_view: ViewRef = of(drawings_setup_sections.piece_side_view)
    drawing_setup_level: DrawingRef = of(drawings_setup_sections.drawing_setup_level)
    piece_level_sizes: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_level_sizes)
    piece_level_run: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_level_run)
    piece_level_edge: Members[Ref[Any], Any] = of(drawings_setup_sections.piece_level_edge)

    # drawings/setup_side.py
    piece_small_side_share: Ref[Ratio] = of(drawings_setup_side.piece_small_side_share)
    piece_small_side: Members[Ref[Any], Any] = of(drawings_setup_side.piece_small_side)
    piece_small_treble: Members[Ref[Any], Any] = of(drawings_setup_side.piece_small_treble)
    piece_small_side_stations: Members[Ref[Any], Any] = of(drawings_setup_side.piece_small_side_stations)
    drawing_setup_side: DrawingRef = of(drawings_setup_side.drawing_setup_side)

    # drawings/side.py
    drawing_side: DrawingRef = of(drawings_side.drawing_side)
    drawing_treble_side: DrawingRef = of(drawings_side.drawing_treble_side)
    piece_bass_turned: Ref[bool] = of(drawings_side.piece_bass_turned)
    piece_side_called: Ref[str] = of(drawings_side.piece_side_called)
    piece_treble_turned: Ref[bool] = of(drawings_side.piece_treble_turned)
    piece_unrolled_words: Members[Ref[Any], Any] = of(drawings_side.piece_unrolled_words)
    piece_treble_words: Members[Ref[Any], Any] = of(drawings_side.piece_treble_words)

    # drawings/string_cards.py
    piece_saddle_card: Members[Ref[Any], Any] = of(drawings_string_cards.piece_saddle_card)
    piece_nut_card: Members[Ref[Any], Any] = of(drawings_string_cards.piece_nut_card)
    piece_spacing_cards: Members[Ref[Any], Any] = of(drawings_string_cards.piece_spacing_cards)
    piece_string_words: Members[Ref[Any], Any] = of(drawings_string_cards.piece_string_words)
    piece_string_sides: Members[Ref[Any], Any] = of(drawings_string_cards.piece_string_sides)
    drawing_string_gauges: DrawingRef = of(drawings_string_cards.drawing_string_gauges)
    piece_string_card_marks: Members[Ref[Any], Any] = of(drawings_string_cards.piece_string_card_marks)

    # drawings/whole.py
    piece_whole_strings: Members[Ref[Any], Any] = of(drawings_whole.piece_whole_strings)
    piece_whole_head: Members[Ref[Any], Any] = of(drawings_whole.piece_whole_head)
    piece_whole_bridge: Members[Ref[Any], Any] = of(drawings_whole.piece_whole_bridge)
    piece_whole_body: Members[Ref[Any], Any] = of(drawings_whole.piece_whole_body)
    piece_whole_board: Members[Ref[Any], Any] = of(drawings_whole.piece_whole_board)

    # findings/on_air.py
    finding_gluing_air: Members[FindingRef, Finding] = of(findings_on_air.finding_gluing_air)
    finding_board_moisture: Members[FindingRef, Finding] = of(findings_on_air.finding_board_moisture)
    finding_sprout: Members[FindingRef, Finding] = of(findings_on_air.finding_sprout)
    finding_binding_step: Members[FindingRef, Finding] = of(findings_on_air.finding_binding_step)
    finding_dome: Members[FindingRef, Finding] = of(findings_on_air.finding_dome)

    # findings/on_bevel.py
    finding_bevel_glued: Members[FindingRef, Finding] = of(findings_on_bevel.finding_bevel_glued)
    finding_bevel_under: Members[FindingRef, Finding] = of(findings_on_bevel.finding_bevel_under)
    finding_side_under_bevel: Members[FindingRef, Finding] = of(findings_on_bevel.finding_side_under_bevel)
    finding_bevel_slope: Members[FindingRef, Finding] = of(findings_on_bevel.finding_bevel_slope)
    finding_braces_at_bevel: Members[FindingRef, Finding] = of(findings_on_bevel.finding_braces_at_bevel)
    finding_hole_at_bevel: Members[FindingRef, Finding] = of(findings_on_bevel.finding_hole_at_bevel)
    finding_port_at_bevel: Members[FindingRef, Finding] = of(findings_on_bevel.finding_port_at_bevel)

    # findings/on_board.py
    finding_edge_uneven: Members[FindingRef, Finding] = of(findings_on_board.finding_edge_uneven)
    finding_ledge: Members[FindingRef, Finding] = of(findings_on_board.finding_ledge)
    finding_blank: Members[FindingRef, Finding] = of(findings_on_board.finding_blank)
    finding_blocks: Members[FindingRef, Finding] = of(findings_on_board.finding_blocks)
    finding_index_template: Members[FindingRef, Finding] = of(findings_on_board.finding_index_template)
    finding_levelling: Members[FindingRef, Finding] = of(findings_on_board.finding_levelling)
    finding_shop: Members[FindingRef, Finding] = of(findings_on_board.finding_shop)

    # findings/on_body.py
    finding_body: Members[FindingRef, Finding] = of(findings_on_body.finding_body)
    finding_body_length: Members[FindingRef, Finding] = of(findings_on_body.finding_body_length)
    finding_bend: Members[FindingRef, Finding] = of(findings_on_body.finding_bend)
    finding_bridge_in_bout: Members[FindingRef, Finding] = of(findings_on_body.finding_bridge_in_bout)
    finding_board_over_hole: Members[FindingRef, Finding] = of(findings_on_body.finding_board_over_hole)
    finding_heel: Members[FindingRef, Finding] = of(findings_on_body.finding_heel)
    finding_foot_heel: Members[FindingRef, Finding] = of(findings_on_body.finding_foot_heel)
    finding_foot_slots: Members[FindingRef, Finding] = of(findings_on_body.finding_foot_slots)
    finding_foot_toe: Members[FindingRef, Finding] = of(findings_on_body.finding_foot_toe)

    # findings/on_braces.py
    finding_brace_outside: Members[FindingRef, Finding] = of(findings_on_braces.finding_brace_outside)
    finding_braces_meet: Members[FindingRef, Finding] = of(findings_on_braces.finding_braces_meet)
    finding_brace_low: Members[FindingRef, Finding] = of(findings_on_braces.finding_brace_low)
    finding_plate_outside: Members[FindingRef, Finding] = of(findings_on_braces.finding_plate_outside)
    finding_wings: Members[FindingRef, Finding] = of(findings_on_braces.finding_wings)
    finding_plate_under_pins: Members[FindingRef, Finding] = of(findings_on_braces.finding_plate_under_pins)
    finding_plate_to_legs: Members[FindingRef, Finding] = of(findings_on_braces.finding_plate_to_legs)
    finding_plate_to_braces: Members[FindingRef, Finding] = of(findings_on_braces.finding_plate_to_braces)
    finding_crossing_room: Members[FindingRef, Finding] = of(findings_on_braces.finding_crossing_room)
    finding_braces_to_hole: Members[FindingRef, Finding] = of(findings_on_braces.finding_braces_to_hole)
    finding_pins_clear: Members[FindingRef, Finding] = of(findings_on_braces.finding_pins_clear)
    finding_braces_apart: Members[FindingRef, Finding] = of(findings_on_braces.finding_braces_apart)
    finding_braces_to_blocks: Members[FindingRef, Finding] = of(findings_on_braces.finding_braces_to_blocks)
    finding_brace_stock: Members[FindingRef, Finding] = of(findings_on_braces.finding_brace_stock)

    # findings/on_bridge.py
    finding_break_points: Members[FindingRef, Finding] = of(findings_on_bridge.finding_break_points)
    finding_saddle_in_slot: Members[FindingRef, Finding] = of(findings_on_bridge.finding_saddle_in_slot)
    finding_under_saddle_slot: Members[FindingRef, Finding] = of(findings_on_bridge.finding_under_saddle_slot)
    finding_pins: Members[FindingRef, Finding] = of(findings_on_bridge.finding_pins)
    finding_rows_of_pins: Members[FindingRef, Finding] = of(findings_on_bridge.finding_rows_of_pins)
    finding_break_angle: Members[FindingRef, Finding] = of(findings_on_bridge.finding_break_angle)
    finding_bridge_holds: Members[FindingRef, Finding] = of(findings_on_bridge.finding_bridge_holds)

    # findings/on_carve.py
    finding_rod_over: Members[FindingRef, Finding] = of(findings_on_carve.finding_rod_over)
    finding_rod_corner: Members[FindingRef, Finding] = of(findings_on_carve.finding_rod_corner)
    finding_rod_under_head: Members[FindingRef, Finding] = of(findings_on_carve.finding_rod_under_head)
    finding_rod_blind_end: Members[FindingRef, Finding] = of(findings_on_carve.finding_rod_blind_end)
    finding_rod_reach: Members[FindingRef, Finding] = of(findings_on_carve.finding_rod_reach)
    finding_scarf: Members[FindingRef, Finding] = of(findings_on_carve.finding_scarf)
    finding_neck_plank: Members[FindingRef, Finding] = of(findings_on_carve.finding_neck_plank)
    finding_neck_stock: Members[FindingRef, Finding] = of(findings_on_carve.finding_neck_stock)
    finding_carve_gauged: Members[FindingRef, Finding] = of(findings_on_carve.finding_carve_gauged)
    finding_heel_carved: Members[FindingRef, Finding] = of(findings_on_carve.finding_heel_carved)
    finding_tuner_edge: Members[FindingRef, Finding] = of(findings_on_carve.finding_tuner_edge)
    finding_tuners_apart: Members[FindingRef, Finding] = of(findings_on_carve.finding_tuners_apart)
    finding_strings_in_slots: Members[FindingRef, Finding] = of(findings_on_carve.finding_strings_in_slots)
    finding_strings_past_posts: Members[FindingRef, Finding] = of(findings_on_carve.finding_strings_past_posts)

    # findings/on_cutaway.py
    finding_tight_bend: Members[FindingRef, Finding] = of(findings_on_cutaway.finding_tight_bend)
    finding_tight_bend_bass: Members[FindingRef, Finding] = of(findings_on_cutaway.finding_tight_bend_bass)
    finding_beside_board: Members[FindingRef, Finding] = of(findings_on_cutaway.finding_beside_board)
    finding_block_beside_cutaway: Members[FindingRef, Finding] = of(findings_on_cutaway.finding_block_beside_cutaway)
    finding_frets_reached: Members[FindingRef, Finding] = of(findings_on_cutaway.finding_frets_reached)

    # findings/on_edges.py
    finding_behind_channel: Members[FindingRef, Finding] = of(findings_on_edges.finding_behind_channel)
    finding_lining_under: Members[FindingRef, Finding] = of(findings_on_edges.finding_lining_under)
    finding_plate_glued: Members[FindingRef, Finding] = of(findings_on_edges.finding_plate_glued)
    finding_under_purfling: Members[FindingRef, Finding] = of(findings_on_edges.finding_under_purfling)
    finding_binding_cover: Members[FindingRef, Finding] = of(findings_on_edges.finding_binding_cover)
    finding_side_between: Members[FindingRef, Finding] = of(findings_on_edges.finding_side_between)
    finding_binding_bend: Members[FindingRef, Finding] = of(findings_on_edges.finding_binding_bend)
    finding_channel_lean: Members[FindingRef, Finding] = of(findings_on_edges.finding_channel_lean)
    finding_channel_cutters: Members[FindingRef, Finding] = of(findings_on_edges.finding_channel_cutters)

    # findings/on_heights.py
    finding_action_bass: Members[FindingRef, Finding] = of(findings_on_heights.finding_action_bass)
    finding_action_treble: Members[FindingRef, Finding] = of(findings_on_heights.finding_action_treble)
    finding_string_on_crown: Members[FindingRef, Finding] = of(findings_on_heights.finding_string_on_crown)
    finding_nut_slots: Members[FindingRef, Finding] = of(findings_on_heights.finding_nut_slots)
    finding_relief_wanted: Members[FindingRef, Finding] = of(findings_on_heights.finding_relief_wanted)
    finding_body_rise: Members[FindingRef, Finding] = of(findings_on_heights.finding_body_rise)
    finding_crown_left: Members[FindingRef, Finding] = of(findings_on_heights.finding_crown_left)
    finding_saddle_exposed: Members[FindingRef, Finding] = of(findings_on_heights.finding_saddle_exposed)
    finding_saddle_low: Members[FindingRef, Finding] = of(findings_on_heights.finding_saddle_low)
    finding_saddle_high: Members[FindingRef, Finding] = of(findings_on_heights.finding_saddle_high)
    finding_over_top: Members[FindingRef, Finding] = of(findings_on_heights.finding_over_top)

    # findings/on_intonation.py
    finding_intonation: Members[FindingRef, Finding] = of(findings_on_intonation.finding_intonation)
    finding_nut: Members[FindingRef, Finding] = of(findings_on_intonation.finding_nut)
    finding_stiffness_range: Members[FindingRef, Finding] = of(findings_on_intonation.finding_stiffness_range)

    # findings/on_neck.py
    finding_neck_angle: Members[FindingRef, Finding] = of(findings_on_neck.finding_neck_angle)
    finding_neck_reset: Members[FindingRef, Finding] = of(findings_on_neck.finding_neck_reset)
    finding_tongue: Members[FindingRef, Finding] = of(findings_on_neck.finding_tongue)
    finding_under_channel: Members[FindingRef, Finding] = of(findings_on_neck.finding_under_channel)
    finding_wood_stiffness: Members[FindingRef, Finding] = of(findings_on_neck.finding_wood_stiffness)
    finding_relief_too_much: Members[FindingRef, Finding] = of(findings_on_neck.finding_relief_too_much)
    finding_relief_too_little: Members[FindingRef, Finding] = of(findings_on_neck.finding_relief_too_little)
    finding_break_at_nut: Members[FindingRef, Finding] = of(findings_on_neck.finding_break_at_nut)
    finding_sideways_at_nut: Members[FindingRef, Finding] = of(findings_on_neck.finding_sideways_at_nut)

    # findings/on_old.py
    finding_old_slots: Members[FindingRef, Finding] = of(findings_on_old.finding_old_slots)
    finding_old_bite: Members[FindingRef, Finding] = of(findings_on_old.finding_old_bite)
    finding_old_room: Members[FindingRef, Finding] = of(findings_on_old.finding_old_room)
    finding_old_left: Members[FindingRef, Finding] = of(findings_on_old.finding_old_left)
    finding_old_bow: Members[FindingRef, Finding] = of(findings_on_old.finding_old_bow)
    finding_old_crowns: Members[FindingRef, Finding] = of(findings_on_old.finding_old_crowns)
    finding_old_saddle: Members[FindingRef, Finding] = of(findings_on_old.finding_old_saddle)
    finding_old_action: Members[FindingRef, Finding] = of(findings_on_old.finding_old_action)
    finding_reset_wedge: Members[FindingRef, Finding] = of(findings_on_old.finding_reset_wedge)
    finding_reset_tongue: Members[FindingRef, Finding] = of(findings_on_old.finding_reset_tongue)
    finding_reset_saddle: Members[FindingRef, Finding] = of(findings_on_old.finding_reset_saddle)
    finding_moved: Members[FindingRef, Finding] = of(findings_on_old.finding_moved)

    # findings/on_openings.py
    finding_opening_braces: Members[FindingRef, Finding] = of(findings_on_openings.finding_opening_braces)
    finding_opening_linings: Members[FindingRef, Finding] = of(findings_on_openings.finding_opening_linings)
    finding_opening_blocks: Members[FindingRef, Finding] = of(findings_on_openings.finding_opening_blocks)
    finding_opening_board: Members[FindingRef, Finding] = of(findings_on_openings.finding_opening_board)
    finding_opening_plate: Members[FindingRef, Finding] = of(findings_on_openings.finding_opening_plate)
    finding_openings_apart: Members[FindingRef, Finding] = of(findings_on_openings.finding_openings_apart)
    finding_ring_edge: Members[FindingRef, Finding] = of(findings_on_openings.finding_ring_edge)
    finding_shaped_edge: Members[FindingRef, Finding] = of(findings_on_openings.finding_shaped_edge)
    finding_ring_channel: Members[FindingRef, Finding] = of(findings_on_openings.finding_ring_channel)
    finding_port_linings: Members[FindingRef, Finding] = of(findings_on_openings.finding_port_linings)
    finding_port_blocks: Members[FindingRef, Finding] = of(findings_on_openings.finding_port_blocks)
    finding_ports_apart: Members[FindingRef, Finding] = of(findings_on_openings.finding_ports_apart)
    finding_port_bend: Members[FindingRef, Finding] = of(findings_on_openings.finding_port_bend)

    # findings/on_permits.py
    finding_permits: Members[FindingRef, Finding] = of(findings_on_permits.finding_permits)

    # findings/on_slots.py
    finding_left_under_slot: Members[FindingRef, Finding] = of(findings_on_slots.finding_left_under_slot)
    finding_slot_depth: Members[FindingRef, Finding] = of(findings_on_slots.finding_slot_depth)
    finding_pilot: Members[FindingRef, Finding] = of(findings_on_slots.finding_pilot)
    finding_clearance: Members[FindingRef, Finding] = of(findings_on_slots.finding_clearance)
    finding_crest_loss: Members[FindingRef, Finding] = of(findings_on_slots.finding_crest_loss)
    finding_saw: Members[FindingRef, Finding] = of(findings_on_slots.finding_saw)
    finding_deepening_saw: Members[FindingRef, Finding] = of(findings_on_slots.finding_deepening_saw)
    finding_kerfs_agree: Members[FindingRef, Finding] = of(findings_on_slots.finding_kerfs_agree)

    # findings/on_strings.py
    finding_edge_margin: Members[FindingRef, Finding] = of(findings_on_strings.finding_edge_margin)
    finding_courses: Members[FindingRef, Finding] = of(findings_on_strings.finding_courses)
    finding_pairs: Members[FindingRef, Finding] = of(findings_on_strings.finding_pairs)
    finding_string_gap: Members[FindingRef, Finding] = of(findings_on_strings.finding_string_gap)
    finding_hump: Members[FindingRef, Finding] = of(findings_on_strings.finding_hump)
    finding_inner_strings: Members[FindingRef, Finding] = of(findings_on_strings.finding_inner_strings)

    # findings/on_tension.py
    finding_breaking: Members[FindingRef, Finding] = of(findings_on_tension.finding_breaking)
    finding_slack: Members[FindingRef, Finding] = of(findings_on_tension.finding_slack)
    finding_uneven: Members[FindingRef, Finding] = of(findings_on_tension.finding_uneven)
    finding_estimates: Members[FindingRef, Finding] = of(findings_on_tension.finding_estimates)
    finding_torque: Members[FindingRef, Finding] = of(findings_on_tension.finding_torque)

    # findings/on_wire.py
    finding_wire_fit: Members[FindingRef, Finding] = of(findings_on_wire.finding_wire_fit)
    finding_bead_bite: Members[FindingRef, Finding] = of(findings_on_wire.finding_bead_bite)
    finding_back_bow: Members[FindingRef, Finding] = of(findings_on_wire.finding_back_bow)
    finding_wire_on_hand: Members[FindingRef, Finding] = of(findings_on_wire.finding_wire_on_hand)

    # parts/access.py
    access_depth: Ref[Mm] = of(part_access.access_depth)
    access_fret: Ref[Count] = of(part_access.access_fret)
    access_beside_board: Ref[Mm] = of(part_access.access_beside_board)

    # parts/arch.py
    arch_surface: CrownRef = of(part_arch.arch_surface)
    arch_radius_at_fret: Rows = of(part_arch.arch_radius_at_fret)
    arch_fall_at_edge_treble: Rows = of(part_arch.arch_fall_at_edge_treble)
    arch_fall_at_edge_bass: Rows = of(part_arch.arch_fall_at_edge_bass)
    arch_fall_at_core_treble: Rows = of(part_arch.arch_fall_at_core_treble)
    arch_fall_at_core_bass: Rows = of(part_arch.arch_fall_at_core_bass)
    arch_fall_at_nut_end: Ref[Mm] = of(part_arch.arch_fall_at_nut_end)
    arch_fall_at_tail_end: Ref[Mm] = of(part_arch.arch_fall_at_tail_end)
    arch_fall_under_string: Rows = of(part_arch.arch_fall_under_string)
    arch_over_chord: Rows = of(part_arch.arch_over_chord)
    arch_hump: Rows = of(part_arch.arch_hump)

    # parts/back_bow.py
    back_bow_length: Ref[Mm] = of(part_back_bow.back_bow_length)
    back_bow_frets: Ref[Ratio] = of(part_back_bow.back_bow_frets)
    back_bow_span: Ref[Mm] = of(part_back_bow.back_bow_span)
    back_bow_layers: LayersRef = of(part_back_bow.back_bow_layers)
    back_bow_curvature: Ref[PerMm] = of(part_back_bow.back_bow_curvature)
    back_bow_least: Ref[Mm] = of(part_back_bow.back_bow_least)
    back_bow_most: Ref[Mm] = of(part_back_bow.back_bow_most)
    back_bow_row: Ref[PerMm2] = of(part_back_bow.back_bow_row)

    # parts/bends.py
    bend_treble: Members[BendRef, Bend] = of(part_bends.bend_treble)
    bend_bass: Members[BendRef, Bend] = of(part_bends.bend_bass)
    bend_tightest_treble: Ref[Mm] = of(part_bends.bend_tightest_treble)
    bend_tightest_bass: Ref[Mm] = of(part_bends.bend_tightest_bass)
    bend_thin_to: Ref[Mm] = of(part_bends.bend_thin_to)

    # parts/bevel.py
    bevel_arm: BevelAskedRef = of(part_bevel.bevel_arm)
    bevel_rib: BevelAskedRef = of(part_bevel.bevel_rib)
    bevel_laid: Members[BevelLaidRef, BevelLaid] = of(part_bevel.bevel_laid)
    bevel_list: Members[BevelRef, Bevel] = of(part_bevel.bevel_list)
    bevel_marks: Members[BevelMarkRef, BevelMark] = of(part_bevel.bevel_marks)
    bevel_patterns: Members[BevelPatternRef, BevelPattern] = of(part_bevel.bevel_patterns)
    bevel_veneers: Members[BevelVeneerRef, BevelVeneer] = of(part_bevel.bevel_veneers)
    bevel_veneer_length_arm: Ref[Mm] = of(part_bevel.bevel_veneer_length_arm)
    bevel_veneer_width_arm: Ref[Mm] = of(part_bevel.bevel_veneer_width_arm)
    bevel_veneer_length_rib: Ref[Mm] = of(part_bevel.bevel_veneer_length_rib)
    bevel_veneer_width_rib: Ref[Mm] = of(part_bevel.bevel_veneer_width_rib)

    # parts/binding.py
    ledge_options: Members[LedgeChoiceRef, LedgeChoice] = of(part_binding.ledge_options)
    ledge_choice: LedgeChoiceRef = of(part_binding.ledge_choice)

    # parts/binding_strips.py
    strip_length: Ref[Mm] = of(part_binding_strips.strip_length)
    strip_list: Members[StripRef, Strip] = of(part_binding_strips.strip_list)

    # parts/blank.py
    blank_length: Ref[Mm] = of(part_blank.blank_length)
    blank_width: Ref[Mm] = of(part_blank.blank_width)
    blank_thickness: Ref[Mm] = of(part_blank.blank_thickness)
    blank_options: Members[BlankChoiceRef, BlankChoice] = of(part_blank.blank_options)
    blank_choice: BlankChoiceRef = of(part_blank.blank_choice)

    # parts/block.py
    block_at_nut: BlockChoiceRef = of(part_block.block_at_nut)
    block_at_end: BlockChoiceRef = of(part_block.block_at_end)
    block_at_middle: BlockChoiceRef = of(part_block.block_at_middle)

    # parts/board.py
    board_width_position: Ref[Mm] = of(part_board.board_width_position)
    board_growth: Ref[Ratio] = of(part_board.board_growth)
    board_half_taper_angle: Ref[Radians] = of(part_board.board_half_taper_angle)
    board_taper_angle: Ref[Radians] = of(part_board.board_taper_angle)
    board_nut_position: Ref[Mm] = of(part_board.board_nut_position)
    board_tail_position: Ref[Mm] = of(part_board.board_tail_position)
    board_length: Ref[Mm] = of(part_board.board_length)
    board_width_at_fret: Rows = of(part_board.board_width_at_fret)
    board_width_at_tail: Ref[Mm] = of(part_board.board_width_at_tail)
    edge_y_treble: Rows = of(part_board.edge_y_treble)
    edge_y_bass: Rows = of(part_board.edge_y_bass)
    board_nut_reach_treble: Ref[Mm] = of(part_board.board_nut_reach_treble)
    board_nut_reach_bass: Ref[Mm] = of(part_board.board_nut_reach_bass)
    board_nut_length: Ref[Mm] = of(part_board.board_nut_length)
    edge_x_treble: Rows = of(part_board.edge_x_treble)
    edge_x_bass: Rows = of(part_board.edge_x_bass)
    core_inset: Ref[Mm] = of(part_board.core_inset)
    core_inset_across: Ref[Mm] = of(part_board.core_inset_across)
    core_width_at_fret: Rows = of(part_board.core_width_at_fret)
    core_y_treble: Rows = of(part_board.core_y_treble)
    core_y_bass: Rows = of(part_board.core_y_bass)
    core_x_treble: Rows = of(part_board.core_x_treble)
    core_x_bass: Rows = of(part_board.core_x_bass)
    core_tail_position: Ref[Mm] = of(part_board.core_tail_position)
    board_outline: QuadrilateralRef = of(part_board.board_outline)
    core_outline: QuadrilateralRef = of(part_board.core_outline)

    # parts/body.py
    body_edge: Ref[Mm] = of(part_body.body_edge)
    body_saddle: Ref[Mm] = of(part_body.body_saddle)
    body_zeros: ZerosRef = of(part_body.body_zeros)
    body_length: Ref[Mm] = of(part_body.body_length)
    body_width: Ref[Mm] = of(part_body.body_width)
    body_reach_treble: Ref[Mm] = of(part_body.body_reach_treble)
    body_reach_bass: Ref[Mm] = of(part_body.body_reach_bass)
    body_reach: Ref[Mm] = of(part_body.body_reach)
    body_perimeter: Ref[Mm] = of(part_body.body_perimeter)
    body_bouts: Members[BoutRef, Bout] = of(part_body.body_bouts)
    body_tightest_bend: Ref[Mm] = of(part_body.body_tightest_bend)
    body_bend_ratio: Ref[Ratio] = of(part_body.body_bend_ratio)
    body_width_share: Ref[Ratio] = of(part_body.body_width_share)
    body_sides: Members[UnrolledSideRef, UnrolledSide] = of(part_body.body_sides)
    body_shells: Members[ShellRef, Shell] = of(part_body.body_shells)
    body_rise_top: Ref[Mm] = of(part_body.body_rise_top)
    body_rise_back: Ref[Mm] = of(part_body.body_rise_back)
    body_deepest: Ref[Mm] = of(part_body.body_deepest)
    body_air_volume: Ref[Mm3] = of(part_body.body_air_volume)
    body_blocks: Members[BodyBlockRef, BodyBlock] = of(part_body.body_blocks)
    body_linings_volume: Ref[Mm3] = of(part_body.body_linings_volume)
    body_air_openings: Members[Ref[Mm], Mm] = of(part_body.body_air_openings)
    body_air_rigid: Ref[Hertz] = of(part_body.body_air_rigid)
    body_air_least: Ref[Hertz] = of(part_body.body_air_least)
    body_air_most: Ref[Hertz] = of(part_body.body_air_most)
    body_plate_length: Ref[Mm] = of(part_body.body_plate_length)
    body_plate_half_width: Ref[Mm] = of(part_body.body_plate_half_width)
    body_plate_width: Ref[Mm] = of(part_body.body_plate_width)
    body_mould_length: Ref[Mm] = of(part_body.body_mould_length)
    body_mould_half_width: Ref[Mm] = of(part_body.body_mould_half_width)
    body_mould_thickness: Ref[Mm] = of(part_body.body_mould_thickness)

    # parts/brace_room.py
    room_bridge_to_legs: Ref[Mm] = of(part_brace_room.room_bridge_to_legs)
    room_plate_to_legs: Ref[Mm] = of(part_brace_room.room_plate_to_legs)
    room_plate_to_braces: Ref[Mm] = of(part_brace_room.room_plate_to_braces)
    room_pins_in_plate: Ref[Mm] = of(part_brace_room.room_pins_in_plate)
    room_crossing_to_hole: Ref[Mm] = of(part_brace_room.room_crossing_to_hole)
    room_braces_to_hole: Ref[Mm] = of(part_brace_room.room_braces_to_hole)
    room_pins_to_braces: Ref[Mm] = of(part_brace_room.room_pins_to_braces)
    room_nearest_braces: Members[Ref[str], str] = of(part_brace_room.room_nearest_braces)
    room_between_braces: Ref[Mm] = of(part_brace_room.room_between_braces)
    room_braces_to_blocks: Ref[Mm] = of(part_brace_room.room_braces_to_blocks)
    room_outside: Members[Ref[str], str] = of(part_brace_room.room_outside)

    # parts/brace_stock.py
    stick_list: Members[StickRef, Stick] = of(part_brace_stock.stick_list)
    stick_billets: Members[BilletRef, Billet] = of(part_brace_stock.stick_billets)
    stick_wanting: Members[StickRef, Stick] = of(part_brace_stock.stick_wanting)

    # parts/braces.py
    brace_zeros: ZerosRef = of(part_braces.brace_zeros)
    brace_list: Members[BraceRef, Brace] = of(part_braces.brace_list)
    brace_crossings: Members[CrossingRef, Crossing] = of(part_braces.brace_crossings)
    brace_unmet: Members[Ref[str], str] = of(part_braces.brace_unmet)
    brace_low: Members[Ref[str], str] = of(part_braces.brace_low)
    brace_tallest_top: Ref[Mm] = of(part_braces.brace_tallest_top)
    brace_tallest_back: Ref[Mm] = of(part_braces.brace_tallest_back)
    brace_places_top: Rows = of(part_braces.brace_places_top)
    brace_places_back: Rows = of(part_braces.brace_places_back)
    brace_legs: Members[Ref[str], str] = of(part_braces.brace_legs)
    brace_bridge: Members[QuadrilateralRef, Quadrilateral] = of(part_braces.brace_bridge)
    brace_pins: Members[SpotRef, Spot] = of(part_braces.brace_pins)

    # parts/bridge.py
    bridge_front_edge: Ref[Mm] = of(part_bridge.bridge_front_edge)
    bridge_front_from_nut: Ref[Mm] = of(part_bridge.bridge_front_from_nut)
    bridge_front_from_join: Ref[Mm] = of(part_bridge.bridge_front_from_join)
    bridge_front_from_octave: Ref[Mm] = of(part_bridge.bridge_front_from_octave)
    bridge_outline: QuadrilateralRef = of(part_bridge.bridge_outline)
    bridge_width_square: Ref[Mm] = of(part_bridge.bridge_width_square)
    bridge_hold_row: Rows = of(part_bridge.bridge_hold_row)
    bridge_hold_slant: Ref[Ratio] = of(part_bridge.bridge_hold_slant)
    bridge_hold_y: Rows = of(part_bridge.bridge_hold_y)
    bridge_hold_x: Rows = of(part_bridge.bridge_hold_x)
    bridge_hold_second: Ref[Mm] = of(part_bridge.bridge_hold_second)
    bridge_hold_back: Rows = of(part_bridge.bridge_hold_back)
    bridge_hold_step: Ref[Mm] = of(part_bridge.bridge_hold_step)
    bridge_hold_across: Ref[Mm] = of(part_bridge.bridge_hold_across)
    bridge_hold_spacing: Ref[Ratio] = of(part_bridge.bridge_hold_spacing)
    bridge_hold_between: Ref[Ratio] = of(part_bridge.bridge_hold_between)
    bridge_hold_wood: Ref[Mm] = of(part_bridge.bridge_hold_wood)
    bridge_hold_wood_across: Ref[Mm] = of(part_bridge.bridge_hold_wood_across)
    bridge_hold_clear: Rows = of(part_bridge.bridge_hold_clear)
    bridge_hold_wall: Rows = of(part_bridge.bridge_hold_wall)
    bridge_hold_behind_slot: Rows = of(part_bridge.bridge_hold_behind_slot)
    bridge_break_run: Rows = of(part_bridge.bridge_break_run)
    bridge_break_angle: Rows = of(part_bridge.bridge_break_angle)
    bridge_under_slot: Ref[Mm] = of(part_bridge.bridge_under_slot)
    bridge_lever: Rows = of(part_bridge.bridge_lever)
    bridge_torque: Ref[NewtonM] = of(part_bridge.bridge_torque)
    bridge_torque_least: Ref[NewtonM] = of(part_bridge.bridge_torque_least)
    bridge_torque_most: Ref[NewtonM] = of(part_bridge.bridge_torque_most)

    # parts/bridge_plate.py
    plate_front: Ref[Mm] = of(part_bridge_plate.plate_front)
    plate_back: Ref[Mm] = of(part_bridge_plate.plate_back)
    plate_slant: Ref[Ratio] = of(part_bridge_plate.plate_slant)
    plate_lean: Ref[Radians] = of(part_bridge_plate.plate_lean)
    plate_shapes: Members[PlateShapeRef, PlateShape] = of(part_bridge_plate.plate_shapes)
    plate_outside: Members[Ref[str], str] = of(part_bridge_plate.plate_outside)
    plate_width: Ref[Mm] = of(part_bridge_plate.plate_width)
    plate_length: Ref[Mm] = of(part_bridge_plate.plate_length)

    # parts/cards.py
    card_arches: Members[ArchCardRef, ArchCard] = of(part_cards.card_arches)
    card_depths: Members[DepthCardRef, DepthCard] = of(part_cards.card_depths)
    card_gaps: Members[GapCardRef, GapCard] = of(part_cards.card_gaps)
    card_notch_depth: Ref[Mm] = of(part_cards.card_notch_depth)
    card_notch_wall: Ref[Mm] = of(part_cards.card_notch_wall)
    card_nut_notch_wall: Ref[Mm] = of(part_cards.card_nut_notch_wall)
    card_nut_notch_stands: Ref[bool] = of(part_cards.card_nut_notch_stands)
    card_notches_serve: Ref[bool] = of(part_cards.card_notches_serve)
    card_proof_notch: Ref[Mm] = of(part_cards.card_proof_notch)
    card_proof_octave: Ref[Mm] = of(part_cards.card_proof_octave)
    card_proof_pin: Ref[Mm] = of(part_cards.card_proof_pin)
    card_rail_head: Ref[Mm] = of(part_cards.card_rail_head)
    card_rail_tail: Ref[Mm] = of(part_cards.card_rail_tail)
    card_rail_back: Ref[Mm] = of(part_cards.card_rail_back)
    card_rail_front: Ref[Mm] = of(part_cards.card_rail_front)

    # parts/channels.py
    channel_edge_top: EdgeRef = of(part_channels.channel_edge_top)
    channel_edge_back: EdgeRef = of(part_channels.channel_edge_back)
    channel_edges: Members[EdgeRef, Edge] = of(part_channels.channel_edges)
    channel_lines: Members[EdgeLinesRef, EdgeLines] = of(part_channels.channel_lines)
    channel_list: Members[ChannelRef, Channel] = of(part_channels.channel_list)
    channel_side_left: Ref[Mm] = of(part_channels.channel_side_left)
    channel_tilts: Members[TiltRef, Tilt] = of(part_channels.channel_tilts)
    channel_cuts: Members[CutRef, Cut] = of(part_channels.channel_cuts)
    channel_flush_cutter: Ref[Mm] = of(part_channels.channel_flush_cutter)

    # parts/dome_year.py
    dome_brace_width: Ref[Mm] = of(part_dome_year.dome_brace_width)
    dome_brace_height: Ref[Mm] = of(part_dome_year.dome_brace_height)
    dome_brace_spacing: Ref[Mm] = of(part_dome_year.dome_brace_spacing)
    dome_curl: Ref[PerMm] = of(part_dome_year.dome_curl)
    dome_curvature_dry: Ref[PerMm] = of(part_dome_year.dome_curvature_dry)
    dome_curvature_dry_least: Ref[PerMm] = of(part_dome_year.dome_curvature_dry_least)
    dome_curvature_wet: Ref[PerMm] = of(part_dome_year.dome_curvature_wet)
    dome_curvature_wet_least: Ref[PerMm] = of(part_dome_year.dome_curvature_wet_least)
    dome_across: Ref[Mm] = of(part_dome_year.dome_across)
    dome_rise_dry: Ref[Mm] = of(part_dome_year.dome_rise_dry)
    dome_rise_made: Ref[Mm] = of(part_dome_year.dome_rise_made)
    dome_rise_wet: Ref[Mm] = of(part_dome_year.dome_rise_wet)
    dome_rise_dry_least: Ref[Mm] = of(part_dome_year.dome_rise_dry_least)
    dome_rise_wet_least: Ref[Mm] = of(part_dome_year.dome_rise_wet_least)

    # parts/downhill.py
    downhill_treble: Members[StretchRef, Stretch] = of(part_downhill.downhill_treble)

    # parts/features.py
    feature_list: Members[FeatureRef, Feature] = of(part_features.feature_list)

    # parts/foot.py
    foot_there: Ref[bool] = of(part_foot.foot_there)
    foot_cheek: Ref[Mm] = of(part_foot.foot_cheek)
    foot_slot_bottom: Ref[Mm] = of(part_foot.foot_slot_bottom)
    foot_slot_depth: Ref[Mm] = of(part_foot.foot_slot_depth)
    foot_slot_depth_at_cap: Ref[Mm] = of(part_foot.foot_slot_depth_at_cap)
    foot_slot_width: Ref[Mm] = of(part_foot.foot_slot_width)
    foot_slot_inner: Ref[Mm] = of(part_foot.foot_slot_inner)
    foot_slot_outer: Ref[Mm] = of(part_foot.foot_slot_outer)
    foot_slot_place: Ref[Mm] = of(part_foot.foot_slot_place)
    foot_slot_angle: Ref[Radians] = of(part_foot.foot_slot_angle)
    foot_slot_bow: Ref[Mm] = of(part_foot.foot_slot_bow)
    foot_step: Ref[Mm] = of(part_foot.foot_step)
    foot_height: Ref[Mm] = of(part_foot.foot_height)
    foot_length: Ref[Mm] = of(part_foot.foot_length)
    foot_end: Ref[Mm] = of(part_foot.foot_end)
    foot_reach: Ref[Mm] = of(part_foot.foot_reach)
    foot_behind_slots: Ref[Mm] = of(part_foot.foot_behind_slots)
    foot_heel_over: Ref[Mm] = of(part_foot.foot_heel_over)
    foot_toe_room: Ref[Mm] = of(part_foot.foot_toe_room)

    # parts/found.py
    found_slot_width: Rows = of(part_found.found_slot_width)
    found_slot_depth: Rows = of(part_found.found_slot_depth)
    found_board_thickness: Rows = of(part_found.found_board_thickness)
    found_arch_radius: Rows = of(part_found.found_arch_radius)
    found_crown: Rows = of(part_found.found_crown)
    found_action_bass: Ref[Mm] = of(part_found.found_action_bass)
    found_action_treble: Ref[Mm] = of(part_found.found_action_treble)
    found_nut_bass: Ref[Mm] = of(part_found.found_nut_bass)
    found_nut_treble: Ref[Mm] = of(part_found.found_nut_treble)
    found_relief: Ref[Mm] = of(part_found.found_relief)
    found_exposed_bass: Ref[Mm] = of(part_found.found_exposed_bass)
    found_exposed_treble: Ref[Mm] = of(part_found.found_exposed_treble)
    found_saddle_slot_width: Ref[Mm] = of(part_found.found_saddle_slot_width)
    found_saddle_slot_depth: Ref[Mm] = of(part_found.found_saddle_slot_depth)
    found_pin: Ref[Mm] = of(part_found.found_pin)
    found_saddle_bass: Ref[Mm] = of(part_found.found_saddle_bass)
    found_saddle_treble: Ref[Mm] = of(part_found.found_saddle_treble)
    found_straightedge: Ref[Mm] = of(part_found.found_straightedge)
    found_lie_first: Ref[Ratio] = of(part_found.found_lie_first)
    found_lie_last: Ref[Ratio] = of(part_found.found_lie_last)
    found_slot_width_least: Ref[Mm] = of(part_found.found_slot_width_least)
    found_slot_width_most: Ref[Mm] = of(part_found.found_slot_width_most)
    found_slot_width_mean: Ref[Mm] = of(part_found.found_slot_width_mean)
    found_slot_depth_least: Ref[Mm] = of(part_found.found_slot_depth_least)
    found_left_least: Ref[Mm] = of(part_found.found_left_least)
    found_crown_least: Ref[Mm] = of(part_found.found_crown_least)
    found_crown_mean: Ref[Mm] = of(part_found.found_crown_mean)
    found_crown_most: Ref[Mm] = of(part_found.found_crown_most)
    found_crown_at_twelve: Ref[Mm] = of(part_found.found_crown_at_twelve)
    found_crown_at_saddle: Ref[Mm] = of(part_found.found_crown_at_saddle)

    # parts/hands.py
    hand_strings: HandedRef = of(part_hands.hand_strings)
    hand_frets: HandedRef = of(part_hands.hand_frets)
    hand_saddle: HandedRef = of(part_hands.hand_saddle)
    hand_braces: HandedRef = of(part_hands.hand_braces)
    hand_posts: HandedRef = of(part_hands.hand_posts)

    # parts/head.py
    head_outline: RunRef = of(part_head.head_outline)
    head_reach: Ref[Mm] = of(part_head.head_reach)
    head_width: Ref[Mm] = of(part_head.head_width)
    head_hole_to_edge: Rows = of(part_head.head_hole_to_edge)
    head_hole_to_face: Ref[Mm] = of(part_head.head_hole_to_face)
    head_roller_depth: Ref[Mm] = of(part_head.head_roller_depth)
    head_slots: Members[QuadrilateralRef, Quadrilateral] = of(part_head.head_slots)
    head_slots_apart: Ref[Mm] = of(part_head.head_slots_apart)
    head_holes_apart: Ref[Mm] = of(part_head.head_holes_apart)
    head_scarf_length: Ref[Mm] = of(part_head.head_scarf_length)
    head_slot_over_face: Rows = of(part_head.head_slot_over_face)
    head_run: Rows = of(part_head.head_run)
    head_drop: Rows = of(part_head.head_drop)
    head_break_angle: Rows = of(part_head.head_break_angle)
    head_sideways_bend: Rows = of(part_head.head_sideways_bend)
    head_post_clear: Rows = of(part_head.head_post_clear)
    head_straight_y: Rows = of(part_head.head_straight_y)
    head_entry: Rows = of(part_head.head_entry)
    head_slot_room: Rows = of(part_head.head_slot_room)
    head_slot_ramp: Rows = of(part_head.head_slot_ramp)

    # parts/heights.py
    action_fret: Ref[Count] = of(part_heights.action_fret)
    action_share: Rows = of(part_heights.action_share)
    action_wanted: Rows = of(part_heights.action_wanted)
    action_nut_fret: Ref[Count] = of(part_heights.action_nut_fret)
    action_nut: Rows = of(part_heights.action_nut)
    crown_height: Ref[Mm] = of(part_heights.crown_height)
    crown_top: Rows = of(part_heights.crown_top)
    height_slope: Rows = of(part_heights.height_slope)
    height_at_zero: Rows = of(part_heights.height_at_zero)
    height_over_crown: Rows = of(part_heights.height_over_crown)
    height_at_scale_end: Rows = of(part_heights.height_at_scale_end)
    height_saddle_x: Rows = of(part_heights.height_saddle_x)
    height_run: Rows = of(part_heights.height_run)
    height_at_saddle: Rows = of(part_heights.height_at_saddle)
    height_over_chord: Rows = of(part_heights.height_over_chord)
    height_saddle_share: Rows = of(part_heights.height_saddle_share)
    height_at_saddle_unloaded: Rows = of(part_heights.height_at_saddle_unloaded)

    # parts/intonation.py
    intonation_paths: StringPathsRef = of(part_intonation.intonation_paths)
    intonation_ratio: Rows = of(part_intonation.intonation_ratio)
    intonation_finger: Rows = of(part_intonation.intonation_finger)
    intonation_strings: StringStiffnessRef = of(part_intonation.intonation_strings)
    intonation_weights: Rows = of(part_intonation.intonation_weights)
    intonation_cents_before: Rows = of(part_intonation.intonation_cents_before)
    intonation_best: SetBacksRef = of(part_intonation.intonation_best)
    intonation_best_saddle: SetBacksRef = of(part_intonation.intonation_best_saddle)
    intonation_break_point: Rows = of(part_intonation.intonation_break_point)
    intonation_nut_freedom: FreedomRef = of(part_intonation.intonation_nut_freedom)
    intonation_saddle_freedom: FreedomRef = of(part_intonation.intonation_saddle_freedom)
    intonation_nut_best: Rows = of(part_intonation.intonation_nut_best)
    intonation_saddle_best: Rows = of(part_intonation.intonation_saddle_best)
    intonation_rms_best: Ref[Cents] = of(part_intonation.intonation_rms_best)
    intonation_nut_forward: Rows = of(part_intonation.intonation_nut_forward)
    intonation_paths_made: StringPathsRef = of(part_intonation.intonation_paths_made)
    intonation_cents_after: Rows = of(part_intonation.intonation_cents_after)
    intonation_rms_before: Rows = of(part_intonation.intonation_rms_before)
    intonation_rms_after: Rows = of(part_intonation.intonation_rms_after)
    intonation_rms_all_before: Ref[Cents] = of(part_intonation.intonation_rms_all_before)
    intonation_rms_all_after: Ref[Cents] = of(part_intonation.intonation_rms_all_after)
    intonation_rms_softest: Rows = of(part_intonation.intonation_rms_softest)
    intonation_rms_stiffest: Rows = of(part_intonation.intonation_rms_stiffest)
    intonation_octave_move: Rows = of(part_intonation.intonation_octave_move)

    # parts/lean.py
    lean_at_tail: Ref[Mm] = of(part_lean.lean_at_tail)
    lean_at_nut: Ref[Mm] = of(part_lean.lean_at_nut)
    lean_wedge: Ref[Mm] = of(part_lean.lean_wedge)
    lean_under_string: Rows = of(part_lean.lean_under_string)
    lean_at_edge_treble: Rows = of(part_lean.lean_at_edge_treble)
    lean_at_edge_bass: Rows = of(part_lean.lean_at_edge_bass)
    lean_at_slot_treble: Rows = of(part_lean.lean_at_slot_treble)
    lean_at_slot_bass: Rows = of(part_lean.lean_at_slot_bass)
    lean_over_middle: Ref[Mm] = of(part_lean.lean_over_middle)
    lean_corner_nut_treble: Ref[Mm] = of(part_lean.lean_corner_nut_treble)
    lean_corner_nut_bass: Ref[Mm] = of(part_lean.lean_corner_nut_bass)
    lean_corner_tail_treble: Ref[Mm] = of(part_lean.lean_corner_tail_treble)
    lean_corner_tail_bass: Ref[Mm] = of(part_lean.lean_corner_tail_bass)

    # parts/markers.py
    marker_position: Rows = of(part_markers.marker_position)
    marker_slant: Rows = of(part_markers.marker_slant)
    marker_offset: Rows = of(part_markers.marker_offset)
    marker_side_depth: Rows = of(part_markers.marker_side_depth)

    # parts/moved.py
    moved_treble: Ref[Mm] = of(part_moved.moved_treble)
    moved_bass: Ref[Mm] = of(part_moved.moved_bass)
    moved_wanted_treble: Ref[Mm] = of(part_moved.moved_wanted_treble)
    moved_wanted_bass: Ref[Mm] = of(part_moved.moved_wanted_bass)
    moved_slots_overlap: Ref[Mm] = of(part_moved.moved_slots_overlap)

    # parts/movement.py
    swell_moisture_made: Ref[Percent] = of(part_movement.swell_moisture_made)
    swell_moisture_dry: Ref[Percent] = of(part_movement.swell_moisture_dry)
    swell_moisture_wet: Ref[Percent] = of(part_movement.swell_moisture_wet)
    swell_moistures: Members[Ref[Percent], Percent] = of(part_movement.swell_moistures)
    swell_width_dry_least: Rows = of(part_movement.swell_width_dry_least)
    swell_width_dry_most: Rows = of(part_movement.swell_width_dry_most)
    swell_width_wet_least: Rows = of(part_movement.swell_width_wet_least)
    swell_width_wet_most: Rows = of(part_movement.swell_width_wet_most)
    sprout_least: Ref[Mm] = of(part_movement.sprout_least)
    sprout_most: Ref[Mm] = of(part_movement.sprout_most)
    sprout_moisture: Ref[Percent] = of(part_movement.sprout_moisture)
    swell_step_dry: Ref[Mm] = of(part_movement.swell_step_dry)

    # parts/neck_blank.py
    plank_scarfed: Ref[bool] = of(part_neck_blank.plank_scarfed)
    plank_head_start: Ref[Mm] = of(part_neck_blank.plank_head_start)
    plank_tail: Ref[Mm] = of(part_neck_blank.plank_tail)
    plank_shaft: Ref[Mm] = of(part_neck_blank.plank_shaft)
    plank_head_along: Ref[Mm] = of(part_neck_blank.plank_head_along)
    plank_scarf_run: Ref[Mm] = of(part_neck_blank.plank_scarf_run)
    plank_saw_run: Ref[Mm] = of(part_neck_blank.plank_saw_run)
    plank_head_rest: Ref[Mm] = of(part_neck_blank.plank_head_rest)
    plank_length: Ref[Mm] = of(part_neck_blank.plank_length)
    plank_head_fall: Ref[Mm] = of(part_neck_blank.plank_head_fall)
    plank_thickness: Ref[Mm] = of(part_neck_blank.plank_thickness)
    plank_over: Ref[Mm] = of(part_neck_blank.plank_over)
    plank_width: Ref[Mm] = of(part_neck_blank.plank_width)
    plank_toe: Members[Ref[Mm], Mm] = of(part_neck_blank.plank_toe)
    plank_heel_blocks: Members[NeckPieceRef, NeckPiece] = of(part_neck_blank.plank_heel_blocks)
    plank_ear: Ref[Mm] = of(part_neck_blank.plank_ear)
    plank_pieces: Members[NeckPieceRef, NeckPiece] = of(part_neck_blank.plank_pieces)
    plank_strip_length: Ref[Mm] = of(part_neck_blank.plank_strip_length)
    plank_yields: Members[NeckYieldRef, NeckYield] = of(part_neck_blank.plank_yields)
    plank_choice: NeckYieldRef = of(part_neck_blank.plank_choice)
    plank_layout: Members[PieceOnStockRef, PieceOnStock] = of(part_neck_blank.plank_layout)

    # parts/neck_carve.py
    carve_shape: CarveShapeRef = of(part_neck_carve.carve_shape)
    carve_form: TaperedBarRef = of(part_neck_carve.carve_form)
    carve_heel_start: Ref[Mm] = of(part_neck_carve.carve_heel_start)
    carve_heel_cap_start: Ref[Mm] = of(part_neck_carve.carve_heel_cap_start)
    carve_stations: Members[CarveStationRef, CarveStation] = of(part_neck_carve.carve_stations)
    carve_gauged: Ref[Count] = of(part_neck_carve.carve_gauged)
    carve_facet_angle: Ref[Radians] = of(part_neck_carve.carve_facet_angle)
    carve_lines: Members[CarveLineRef, CarveLine] = of(part_neck_carve.carve_lines)
    carve_flat_back: Ref[Mm] = of(part_neck_carve.carve_flat_back)
    carve_heel_curve: RunRef = of(part_neck_carve.carve_heel_curve)
    carve_deepest: Ref[Mm] = of(part_neck_carve.carve_deepest)

    # parts/neck_section.py
    neck_section_board_slotted: MomentsRef = of(part_neck_section.neck_section_board_slotted)
    neck_section_bars: MomentsRef = of(part_neck_section.neck_section_bars)
    neck_section_bars_alone: MomentsRef = of(part_neck_section.neck_section_bars_alone)
    neck_section_channel: MomentsRef = of(part_neck_section.neck_section_channel)
    neck_section_below: MomentsRef = of(part_neck_section.neck_section_below)
    neck_section_whole: MomentsRef = of(part_neck_section.neck_section_whole)
    neck_section_slotted: MomentsRef = of(part_neck_section.neck_section_slotted)
    neck_section_stiffness: Rows = of(part_neck_section.neck_section_stiffness)
    neck_section_stiffness_slotted: Rows = of(part_neck_section.neck_section_stiffness_slotted)
    neck_section_stiffness_most: Rows = of(part_neck_section.neck_section_stiffness_most)
    neck_section_stiffness_least: Rows = of(part_neck_section.neck_section_stiffness_least)
    neck_section_slots_keep: Rows = of(part_neck_section.neck_section_slots_keep)
    neck_section_axis: Rows = of(part_neck_section.neck_section_axis)
    neck_section_channel_depth: Ref[Mm] = of(part_neck_section.neck_section_channel_depth)
    neck_section_under_channel: Rows = of(part_neck_section.neck_section_under_channel)

    # parts/neck_set.py
    neck_set_run: Rows = of(part_neck_set.neck_set_run)
    neck_set_run_mean: Ref[Mm] = of(part_neck_set.neck_set_run_mean)
    neck_set_height_mean: Ref[Mm] = of(part_neck_set.neck_set_height_mean)
    neck_set_board_at_join: Ref[Mm] = of(part_neck_set.neck_set_board_at_join)
    neck_set_dome_rise: Ref[Mm] = of(part_neck_set.neck_set_dome_rise)
    neck_set_bridge_top: Ref[Mm] = of(part_neck_set.neck_set_bridge_top)
    neck_angle_target: Ref[Radians] = of(part_neck_set.neck_angle_target)
    neck_set_crown_read: Ref[Mm] = of(part_neck_set.neck_set_crown_read)
    neck_angle_made: Ref[Radians] = of(part_neck_set.neck_angle_made)
    neck_angle_face: Ref[Radians] = of(part_neck_set.neck_angle_face)
    neck_set_straightedge: Ref[Mm] = of(part_neck_set.neck_set_straightedge)
    neck_set_straightedge_on_board: Ref[Mm] = of(part_neck_set.neck_set_straightedge_on_board)
    neck_set_straightedge_over_top: Ref[Mm] = of(part_neck_set.neck_set_straightedge_over_top)
    heel_wedge: Ref[Mm] = of(part_neck_set.heel_wedge)
    heel_wedge_to_take: Ref[Mm] = of(part_neck_set.heel_wedge_to_take)
    neck_set_exposed: Rows = of(part_neck_set.neck_set_exposed)
    neck_set_exposed_mean: Ref[Mm] = of(part_neck_set.neck_set_exposed_mean)
    neck_set_over_top: Rows = of(part_neck_set.neck_set_over_top)
    neck_set_over_top_mean: Ref[Mm] = of(part_neck_set.neck_set_over_top_mean)
    neck_set_action: Rows = of(part_neck_set.neck_set_action)
    neck_set_tongue_gap: Ref[Mm] = of(part_neck_set.neck_set_tongue_gap)
    neck_set_drop: Ref[Mm] = of(part_neck_set.neck_set_drop)

    # parts/nut_slots.py
    nut_slot_over_board: Rows = of(part_nut_slots.nut_slot_over_board)
    nut_slot_over_crest: Rows = of(part_nut_slots.nut_slot_over_crest)
    nut_slot_over_first: Rows = of(part_nut_slots.nut_slot_over_first)
    nut_slot_depth: Rows = of(part_nut_slots.nut_slot_depth)
    nut_slot_width: Rows = of(part_nut_slots.nut_slot_width)
    nut_slot_top: Rows = of(part_nut_slots.nut_slot_top)
    nut_slot_blank: Ref[Mm] = of(part_nut_slots.nut_slot_blank)

    # parts/openings.py
    opening_main: Members[OpeningRef, Opening] = of(part_openings.opening_main)
    opening_further: Members[OpeningRef, Opening] = of(part_openings.opening_further)
    opening_list: Members[OpeningRef, Opening] = of(part_openings.opening_list)
    opening_shaped: Members[Ref[str], str] = of(part_openings.opening_shaped)
    opening_to_braces: Members[OpeningGapRef, OpeningGap] = of(part_openings.opening_to_braces)
    opening_to_linings: Members[OpeningGapRef, OpeningGap] = of(part_openings.opening_to_linings)
    opening_to_blocks: Members[OpeningGapRef, OpeningGap] = of(part_openings.opening_to_blocks)
    opening_to_board: Members[OpeningGapRef, OpeningGap] = of(part_openings.opening_to_board)
    opening_to_plate: Members[OpeningGapRef, OpeningGap] = of(part_openings.opening_to_plate)
    opening_reach: Members[OpeningGapRef, OpeningGap] = of(part_openings.opening_reach)
    opening_to_others: Members[OpeningGapRef, OpeningGap] = of(part_openings.opening_to_others)
    opening_to_edge: Members[OpeningGapRef, OpeningGap] = of(part_openings.opening_to_edge)
    opening_cutter: Ref[Mm] = of(part_openings.opening_cutter)
    opening_cutter_radius: Ref[Mm] = of(part_openings.opening_cutter_radius)

    # parts/pairs.py
    pair_paths: StringPathsRef = of(part_pairs.pair_paths)
    pair_rms_on_one: Rows = of(part_pairs.pair_rms_on_one)
    pair_rms_on_two: Rows = of(part_pairs.pair_rms_on_two)
    pair_rms_all_on_one: Ref[Cents] = of(part_pairs.pair_rms_all_on_one)
    pair_rms_all_on_two: Ref[Cents] = of(part_pairs.pair_rms_all_on_two)

    # parts/port.py
    port_list: Members[PortRef, Port] = of(part_port.port_list)
    port_bass: Members[PortRef, Port] = of(part_port.port_bass)
    port_treble: Members[PortRef, Port] = of(part_port.port_treble)
    port_to_linings: Members[OpeningGapRef, OpeningGap] = of(part_port.port_to_linings)
    port_to_blocks: Members[OpeningGapRef, OpeningGap] = of(part_port.port_to_blocks)
    port_to_others: Members[OpeningGapRef, OpeningGap] = of(part_port.port_to_others)
    port_bends: Members[OpeningGapRef, OpeningGap] = of(part_port.port_bends)

    # parts/refret.py
    refret_fits: Members[FitInOldRef, FitInOld] = of(part_refret.refret_fits)
    refret_verdicts: Members[VerdictOnOldRef, VerdictOnOld] = of(part_refret.refret_verdicts)
    refret_crowns: Members[CrownOnOldRef, CrownOnOld] = of(part_refret.refret_crowns)
    refret_wedges: Members[WedgeInOldRef, WedgeInOld] = of(part_refret.refret_wedges)
    refret_bows: Members[BowOfOldRef, BowOfOld] = of(part_refret.refret_bows)
    refret_chosen: FitInOldRef = of(part_refret.refret_chosen)
    refret_chosen_bow: BowOfOldRef = of(part_refret.refret_chosen_bow)
    refret_room: Ref[Mm] = of(part_refret.refret_room)

    # parts/relief.py
    relief_curvature: Ref[PerMm] = of(part_relief.relief_curvature)
    relief_rise: Rows = of(part_relief.relief_rise)
    relief_lever: Rows = of(part_relief.relief_lever)
    relief_stations: Rows = of(part_relief.relief_stations)
    relief_neck: PulledNeckRef = of(part_relief.relief_neck)
    relief_under_pull_least: Ref[Mm] = of(part_relief.relief_under_pull_least)
    relief_under_pull_most: Ref[Mm] = of(part_relief.relief_under_pull_most)
    relief_predicted_least: Ref[Mm] = of(part_relief.relief_predicted_least)
    relief_predicted_most: Ref[Mm] = of(part_relief.relief_predicted_most)
    relief_for_rod_least: Ref[Mm] = of(part_relief.relief_for_rod_least)
    relief_for_rod_most: Ref[Mm] = of(part_relief.relief_for_rod_most)
    relief_rod_moment_least: Ref[NewtonMm] = of(part_relief.relief_rod_moment_least)
    relief_rod_moment_most: Ref[NewtonMm] = of(part_relief.relief_rod_moment_most)

    # parts/reset.py
    reset_angle_found: Ref[Radians] = of(part_reset.reset_angle_found)
    reset_angle: Ref[Radians] = of(part_reset.reset_angle)
    reset_wedge: Ref[Mm] = of(part_reset.reset_wedge)
    reset_tongue: Ref[Mm] = of(part_reset.reset_tongue)
    reset_tongue_left: Ref[Mm] = of(part_reset.reset_tongue_left)
    reset_exposed: Rows = of(part_reset.reset_exposed)

    # parts/rim_at_bevel.py
    bevelled_blocks: Members[BevelBlockRef, BevelBlock] = of(part_rim_at_bevel.bevelled_blocks)
    bevelled_more: Ref[Mm3] = of(part_rim_at_bevel.bevelled_more)
    bevelled_bindings: Members[BevelBindingRef, BevelBinding] = of(part_rim_at_bevel.bevelled_bindings)
    bevelled_braces: Members[BevelBraceRef, BevelBrace] = of(part_rim_at_bevel.bevelled_braces)
    bevelled_holes: Members[OpeningGapRef, OpeningGap] = of(part_rim_at_bevel.bevelled_holes)
    bevelled_ports: Members[OpeningGapRef, OpeningGap] = of(part_rim_at_bevel.bevelled_ports)

    # parts/rod_channel.py
    rod_start: Ref[Mm] = of(part_rod_channel.rod_start)
    rod_start_away: Ref[Mm] = of(part_rod_channel.rod_start_away)
    rod_body_end: Ref[Mm] = of(part_rod_channel.rod_body_end)
    rod_asked: Ref[Mm] = of(part_rod_channel.rod_asked)
    rod_nut_end: Ref[Mm] = of(part_rod_channel.rod_nut_end)
    rod_end: Ref[Mm] = of(part_rod_channel.rod_end)
    rod_blind_left: Ref[Mm] = of(part_rod_channel.rod_blind_left)
    rod_unreached: Ref[Mm] = of(part_rod_channel.rod_unreached)
    rod_over: Rows = of(part_rod_channel.rod_over)
    rod_corner: Rows = of(part_rod_channel.rod_corner)
    rod_under_head: Ref[Mm] = of(part_rod_channel.rod_under_head)

    # parts/saddle.py
    saddle_set_back_best: Rows = of(part_saddle.saddle_set_back_best)
    saddle_set_back: Rows = of(part_saddle.saddle_set_back)
    saddle_break_x: Rows = of(part_saddle.saddle_break_x)
    saddle_slant: Ref[Ratio] = of(part_saddle.saddle_slant)
    saddle_position: Ref[Mm] = of(part_saddle.saddle_position)
    saddle_off_line: Rows = of(part_saddle.saddle_off_line)
    saddle_to_face: Rows = of(part_saddle.saddle_to_face)
    saddle_angle: Ref[Radians] = of(part_saddle.saddle_angle)
    saddle_reach: Ref[Mm] = of(part_saddle.saddle_reach)
    saddle_end_treble: Ref[Mm] = of(part_saddle.saddle_end_treble)
    saddle_end_bass: Ref[Mm] = of(part_saddle.saddle_end_bass)
    saddle_length: Ref[Mm] = of(part_saddle.saddle_length)
    saddle_tall: Rows = of(part_saddle.saddle_tall)
    saddle_showing: Ref[Ratio] = of(part_saddle.saddle_showing)
    saddle_blank_height: Ref[Mm] = of(part_saddle.saddle_blank_height)

    # parts/saw.py
    saw_main: SawRef = of(part_saw.saw_main)
    saw_deepening: SawRef = of(part_saw.saw_deepening)
    saw_kerf: Ref[Mm] = of(part_saw.saw_kerf)
    saw_kerf_over: Ref[Mm] = of(part_saw.saw_kerf_over)

    # parts/scale.py
    scale_run_bass: Ref[Mm] = of(part_scale.scale_run_bass)
    scale_run_treble: Ref[Mm] = of(part_scale.scale_run_treble)
    scale_lead: Ref[Mm] = of(part_scale.scale_lead)
    scale_run: Ref[Mm] = of(part_scale.scale_run)
    fret_fraction: Rows = of(part_scale.fret_fraction)
    fret_x_bass: Rows = of(part_scale.fret_x_bass)
    fret_x_treble: Rows = of(part_scale.fret_x_treble)
    fret_position: Rows = of(part_scale.fret_position)
    fret_step: Rows = of(part_scale.fret_step)
    fret_half_spread: Rows = of(part_scale.fret_half_spread)
    fret_slant: Rows = of(part_scale.fret_slant)
    fret_angle: Rows = of(part_scale.fret_angle)
    fret_cents_per_mm: Rows = of(part_scale.fret_cents_per_mm)
    fret_cents_per_tenth: Rows = of(part_scale.fret_cents_per_tenth)

    # parts/section.py
    section_board: MomentsRef = of(part_section.section_board)
    section_slotted_straight: MomentsRef = of(part_section.section_slotted_straight)
    section_slotted_following: MomentsRef = of(part_section.section_slotted_following)
    section_neck_depth: Rows = of(part_section.section_neck_depth)
    section_neck: MomentsRef = of(part_section.section_neck)
    section_kept_straight: Rows = of(part_section.section_kept_straight)
    section_kept_following: Rows = of(part_section.section_kept_following)
    section_kept_straight_with_neck: Rows = of(part_section.section_kept_straight_with_neck)
    section_kept_following_with_neck: Rows = of(part_section.section_kept_following_with_neck)

    # parts/sides.py
    side_length: Ref[Mm] = of(part_sides.side_length)
    side_length_middle: Ref[Mm] = of(part_sides.side_length_middle)
    side_along: Rows = of(part_sides.side_along)
    side_upper: Rows = of(part_sides.side_upper)
    side_lower: Rows = of(part_sides.side_lower)
    side_depth: Rows = of(part_sides.side_depth)
    side_stations: Members[SideStationRef, SideStation] = of(part_sides.side_stations)
    side_deepest: Ref[Mm] = of(part_sides.side_deepest)
    side_shallowest: Ref[Mm] = of(part_sides.side_shallowest)
    side_extent: Ref[Mm] = of(part_sides.side_extent)
    side_longer: Ref[Mm] = of(part_sides.side_longer)
    side_blank_length: Ref[Mm] = of(part_sides.side_blank_length)
    side_blank_width: Ref[Mm] = of(part_sides.side_blank_width)

    # parts/slot_options.py
    cutting_options: Members[SlotOptionRef, SlotOption] = of(part_slot_options.cutting_options)
    cutting_kept: Ref[Any] = of(part_slot_options.cutting_kept)

    # parts/slots.py
    slot_need: Ref[Mm] = of(part_slots.slot_need)
    slot_fall_at_end: Rows = of(part_slots.slot_fall_at_end)
    slot_first: Ref[Count] = of(part_slots.slot_first)
    slot_fall_greatest: Ref[Mm] = of(part_slots.slot_fall_greatest)
    slot_depth_at_crest: Ref[Mm] = of(part_slots.slot_depth_at_crest)
    slot_depth_setting: Ref[Mm] = of(part_slots.slot_depth_setting)
    slot_kerf_at_crest: Ref[Mm] = of(part_slots.slot_kerf_at_crest)
    slot_kerf_at_end: Rows = of(part_slots.slot_kerf_at_end)
    slot_depth_at_end: Rows = of(part_slots.slot_depth_at_end)
    slot_to_deepen: Rows = of(part_slots.slot_to_deepen)
    slot_left_at_crest: Rows = of(part_slots.slot_left_at_crest)
    slot_thickness_at_end: Rows = of(part_slots.slot_thickness_at_end)
    slot_left_at_treble_end: Rows = of(part_slots.slot_left_at_treble_end)
    slot_left_at_bass_end: Rows = of(part_slots.slot_left_at_bass_end)
    slot_left_at_end: Rows = of(part_slots.slot_left_at_end)
    slot_left_least: Rows = of(part_slots.slot_left_least)
    slot_thinnest_at_crest: Ref[Mm] = of(part_slots.slot_thinnest_at_crest)
    slot_thinnest_at_end: Ref[Mm] = of(part_slots.slot_thinnest_at_end)

    # parts/soundhole.py
    soundhole_centre: Ref[Mm] = of(part_soundhole.soundhole_centre)
    soundhole_from_zero: Ref[Mm] = of(part_soundhole.soundhole_from_zero)
    soundhole_wide: Ref[Mm] = of(part_soundhole.soundhole_wide)
    soundhole_long: Ref[Mm] = of(part_soundhole.soundhole_long)
    soundhole_edge_neck: Ref[Mm] = of(part_soundhole.soundhole_edge_neck)
    soundhole_area: Ref[Mm2] = of(part_soundhole.soundhole_area)
    soundhole_from_board: Ref[Mm] = of(part_soundhole.soundhole_from_board)
    rosette_rings: Members[RingRef, Ring] = of(part_soundhole.rosette_rings)

    # parts/string_lines.py
    string_pair_nut: Rows = of(part_string_lines.string_pair_nut)
    string_pair_bridge: Rows = of(part_string_lines.string_pair_bridge)
    string_y_nut: Rows = of(part_string_lines.string_y_nut)
    string_gap_nut: Rows = of(part_string_lines.string_gap_nut)
    string_y_bridge: Rows = of(part_string_lines.string_y_bridge)
    string_along_nut: Rows = of(part_string_lines.string_along_nut)
    string_spread_along_nut: Ref[Mm] = of(part_string_lines.string_spread_along_nut)
    string_along_saddle: Rows = of(part_string_lines.string_along_saddle)
    string_saddle_slant: Ref[Ratio] = of(part_string_lines.string_saddle_slant)
    string_scale_end_x: Rows = of(part_string_lines.string_scale_end_x)
    string_fraction: Rows = of(part_string_lines.string_fraction)
    string_y: Rows = of(part_string_lines.string_y)
    string_x: Rows = of(part_string_lines.string_x)
    string_splay: Rows = of(part_string_lines.string_splay)
    string_error: Rows = of(part_string_lines.string_error)
    string_margin_treble: Rows = of(part_string_lines.string_margin_treble)
    string_margin_bass: Rows = of(part_string_lines.string_margin_bass)

    # parts/template.py
    template_notch: Rows = of(part_template.template_notch)
    template_nut_notch: Ref[Mm] = of(part_template.template_nut_notch)
    template_notch_width: Ref[Mm] = of(part_template.template_notch_width)
    template_pin_reach: Ref[Mm] = of(part_template.template_pin_reach)
    template_pin_first: Ref[Mm] = of(part_template.template_pin_first)
    template_pin_last: Ref[Mm] = of(part_template.template_pin_last)
    template_matches: Members[TemplateMatchRef, TemplateMatch] = of(part_template.template_matches)

    # parts/tension.py
    string_length: Rows = of(part_tension.string_length)
    string_speaking_length: Rows = of(part_tension.string_speaking_length)
    string_core: Rows = of(part_tension.string_core)
    string_weight: Rows = of(part_tension.string_weight)
    string_pull: Rows = of(part_tension.string_pull)
    string_pull_on_scale: Rows = of(part_tension.string_pull_on_scale)
    string_pull_said: Ref[str] = of(part_tension.string_pull_said)
    string_pull_total: Ref[Newton] = of(part_tension.string_pull_total)
    string_pull_ratio: Ref[Ratio] = of(part_tension.string_pull_ratio)
    string_stress: Rows = of(part_tension.string_stress)
    string_stress_on_scale: Rows = of(part_tension.string_stress_on_scale)
    string_breaking: Rows = of(part_tension.string_breaking)
    string_reserve: Rows = of(part_tension.string_reserve)
    string_modulus: Rows = of(part_tension.string_modulus)
    string_modulus_least: Rows = of(part_tension.string_modulus_least)
    string_modulus_most: Rows = of(part_tension.string_modulus_most)
    string_elongation: Rows = of(part_tension.string_elongation)
    string_stretch: Rows = of(part_tension.string_stretch)
    string_stretch_least: Rows = of(part_tension.string_stretch_least)
    string_stretch_most: Rows = of(part_tension.string_stretch_most)
    string_stretch_length: Rows = of(part_tension.string_stretch_length)
    string_bending_radius: Rows = of(part_tension.string_bending_radius)

    # parts/thickness.py
    thickness_wedge: Ref[Mm] = of(part_thickness.thickness_wedge)
    thickness_wedge_angle: Ref[Radians] = of(part_thickness.thickness_wedge_angle)
    thickness_at_crest: Rows = of(part_thickness.thickness_at_crest)
    thickness_crest_at_slot_treble: Rows = of(part_thickness.thickness_crest_at_slot_treble)
    thickness_crest_at_slot_bass: Rows = of(part_thickness.thickness_crest_at_slot_bass)
    thickness_at_edge_treble: Rows = of(part_thickness.thickness_at_edge_treble)
    thickness_at_edge_bass: Rows = of(part_thickness.thickness_at_edge_bass)
    thickness_edge_spread: Ref[Mm] = of(part_thickness.thickness_edge_spread)
    thickness_before_levelling: Ref[Mm] = of(part_thickness.thickness_before_levelling)
    thickness_to_plane: Rows = of(part_thickness.thickness_to_plane)

    # parts/top_across.py
    across_station: Ref[Mm] = of(part_top_across.across_station)
    across_area: Ref[Mm2] = of(part_top_across.across_area)
    across_holders: Members[HolderRef, Holder] = of(part_top_across.across_holders)
    across_near: Members[HolderRef, Holder] = of(part_top_across.across_near)
    across_height: Ref[Mm] = of(part_top_across.across_height)
    across_height_near: Ref[Mm] = of(part_top_across.across_height_near)
    across_lean: Ref[Ratio] = of(part_top_across.across_lean)
    across_covered: Ref[Mm] = of(part_top_across.across_covered)
    across_unheld: Ref[str] = of(part_top_across.across_unheld)

    # parts/top_graduated.py
    graduated_edge: Ref[Mm] = of(part_top_graduated.graduated_edge)
    graduated_run: Ref[Mm] = of(part_top_graduated.graduated_run)
    graduated_band: Ref[Ratio] = of(part_top_graduated.graduated_band)
    graduated_mean: Ref[Mm] = of(part_top_graduated.graduated_mean)
    graduated_weight: Ref[Gram] = of(part_top_graduated.graduated_weight)

    # parts/treble_side.py
    treble_side_walls: Members[UnrolledSideRef, UnrolledSide] = of(part_treble_side.treble_side_walls)
    treble_side_length: Ref[Mm] = of(part_treble_side.treble_side_length)
    treble_side_length_middle: Ref[Mm] = of(part_treble_side.treble_side_length_middle)
    treble_side_along: Rows = of(part_treble_side.treble_side_along)
    treble_side_upper: Rows = of(part_treble_side.treble_side_upper)
    treble_side_lower: Rows = of(part_treble_side.treble_side_lower)
    treble_side_stations: Members[SideStationRef, SideStation] = of(part_treble_side.treble_side_stations)
    treble_side_depths: Rows = of(part_treble_side.treble_side_depths)
    treble_side_extent: Ref[Mm] = of(part_treble_side.treble_side_extent)

    # parts/whole.py
    whole_plates: Ref[Gram] = of(part_whole.whole_plates)
    whole_rim: Ref[Gram] = of(part_whole.whole_rim)
    whole_inside: Ref[Gram] = of(part_whole.whole_inside)
    whole_shaft: Ref[Gram] = of(part_whole.whole_shaft)
    whole_head: Ref[Gram] = of(part_whole.whole_head)
    whole_heel: Ref[Gram] = of(part_whole.whole_heel)
    whole_board: Ref[Gram] = of(part_whole.whole_board)
    whole_bridge: Ref[Gram] = of(part_whole.whole_bridge)
    whole_bought: Ref[Gram] = of(part_whole.whole_bought)
    whole_body: Ref[Gram] = of(part_whole.whole_body)
    whole_neck: Ref[Gram] = of(part_whole.whole_neck)
    whole_weight: Ref[Gram] = of(part_whole.whole_weight)

    # parts/wire.py
    wire_line: Rows = of(part_wire.wire_line)
    wire_cut: Rows = of(part_wire.wire_cut)
    wire_total: Ref[Mm] = of(part_wire.wire_total)
    wire_nip_back: Ref[Mm] = of(part_wire.wire_nip_back)
    wire_bend_radius: Rows = of(part_wire.wire_bend_radius)
    wire_fits: Members[WireFitRef, WireFit] = of(part_wire.wire_fits)

    # setups/arching.py
    arching_radius_nut: Ref[Mm] = of(setups_arching.arching_radius_nut)
    arching_radius_middle: Ref[Mm] = of(setups_arching.arching_radius_middle)
    arching_radius_end: Ref[Mm] = of(setups_arching.arching_radius_end)
    arching_fall_middle: Ref[Mm] = of(setups_arching.arching_fall_middle)
    arching_edge_middle: Ref[Mm] = of(setups_arching.arching_edge_middle)

    # setups/bevelling.py
    setup_bevel_block: SetupRef = of(setups_bevelling.setup_bevel_block)
    setup_bevel: SetupRef = of(setups_bevelling.setup_bevel)
    setup_bevel_veneer: SetupRef = of(setups_bevelling.setup_bevel_veneer)

    # setups/board_binding.py
    setup_board_binding: SetupRef = of(setups_board_binding.setup_board_binding)

    # setups/body_binding.py
    setup_flush: SetupRef = of(setups_body_binding.setup_flush)
    setup_binding_bend: SetupRef = of(setups_body_binding.setup_binding_bend)
    setup_channels: SetupRef = of(setups_body_binding.setup_channels)
    setup_body_binding: SetupRef = of(setups_body_binding.setup_body_binding)

    # setups/body_work.py
    setup_mould: SetupRef = of(setups_body_work.setup_mould)
    setup_sides: SetupRef = of(setups_body_work.setup_sides)
    setup_brace_stock: SetupRef = of(setups_body_work.setup_brace_stock)
    setup_brace_top: SetupRef = of(setups_body_work.setup_brace_top)
    setup_bridge_plate: SetupRef = of(setups_body_work.setup_bridge_plate)
    setup_brace_back: SetupRef = of(setups_body_work.setup_brace_back)

    # setups/bridging.py
    setup_bridge: SetupRef = of(setups_bridging.setup_bridge)
    setup_saddle_slot: SetupRef = of(setups_bridging.setup_saddle_slot)
    setup_saddle: SetupRef = of(setups_bridging.setup_saddle)
    setup_strings: SetupRef = of(setups_bridging.setup_strings)
    setup_in_tune: SetupRef = of(setups_bridging.setup_in_tune)

    # setups/building_on.py
    setup_heel_slots: SetupRef = of(setups_building_on.setup_heel_slots)
    setup_build_board: SetupRef = of(setups_building_on.setup_build_board)
    setup_built_on: SetupRef = of(setups_building_on.setup_built_on)

    # setups/edging.py
    setup_taper: SetupRef = of(setups_edging.setup_taper)
    setup_ledge: SetupRef = of(setups_edging.setup_ledge)

    # setups/fretting.py
    setup_wire: SetupRef = of(setups_fretting.setup_wire)
    setup_markers: SetupRef = of(setups_fretting.setup_markers)
    setup_caliper: SetupRef = of(setups_fretting.setup_caliper)

    # setups/jig.py
    jig_taper: JigRef = of(setups_jig.jig_taper)
    jig_slots: JigRef = of(setups_jig.jig_slots)

    # setups/neck_carving.py
    setup_neck_blank: SetupRef = of(setups_neck_carving.setup_neck_blank)
    setup_neck_scarf: SetupRef = of(setups_neck_carving.setup_neck_scarf)
    setup_neck_rod: SetupRef = of(setups_neck_carving.setup_neck_rod)
    setup_neck_head: SetupRef = of(setups_neck_carving.setup_neck_head)
    setup_neck_carve: SetupRef = of(setups_neck_carving.setup_neck_carve)

    # setups/neck_joint.py
    setup_neck_joint: SetupRef = of(setups_neck_joint.setup_neck_joint)

    # setups/neck_set.py
    setup_neck_set: SetupRef = of(setups_neck_set.setup_neck_set)
    setup_nut_slots: SetupRef = of(setups_neck_set.setup_nut_slots)
    setup_relief: SetupRef = of(setups_neck_set.setup_relief)

    # setups/opening_work.py
    setup_openings: SetupRef = of(setups_opening_work.setup_openings)
    setup_ports: SetupRef = of(setups_opening_work.setup_ports)

    # setups/owner.py
    setup_owner_air: SetupRef = of(setups_owner.setup_owner_air)

    # setups/preparing.py
    setup_blank: SetupRef = of(setups_preparing.setup_blank)
    setup_layout: SetupRef = of(setups_preparing.setup_layout)
    setup_template: SetupRef = of(setups_preparing.setup_template)

    # setups/repairing.py
    setup_as_found: SetupRef = of(setups_repairing.setup_as_found)
    setup_old_slots: SetupRef = of(setups_repairing.setup_old_slots)
    setup_which_wire: SetupRef = of(setups_repairing.setup_which_wire)
    setup_refret: SetupRef = of(setups_repairing.setup_refret)

    # setups/resetting.py
    setup_reset: SetupRef = of(setups_resetting.setup_reset)
    setup_bridge_again: SetupRef = of(setups_resetting.setup_bridge_again)
    setup_handed_back: SetupRef = of(setups_resetting.setup_handed_back)

    # setups/slotting.py
    setup_slot: SetupRef = of(setups_slotting.setup_slot)
    setup_deepen: SetupRef = of(setups_slotting.setup_deepen)

    # setups/station.py
    station_middle_fret: Ref[Count] = of(setups_station.station_middle_fret)
    station_fanned: Ref[bool] = of(setups_station.station_fanned)
    station_width_at_nut_end: Ref[Mm] = of(setups_station.station_width_at_nut_end)

    # setups/stop.py
    stop_stock: Ref[Mm] = of(setups_stop.stop_stock)
    stop_over_cradle: Ref[Mm] = of(setups_stop.stop_over_cradle)
    stop_thinnest_fret: Ref[Count] = of(setups_stop.stop_thinnest_fret)
    stop_deepest_fret: Ref[Count] = of(setups_stop.stop_deepest_fret)

    # setups/surfacing.py
    setup_arch: SetupRef = of(setups_surfacing.setup_arch)
    setup_level: SetupRef = of(setups_surfacing.setup_level)

    # setups/taper.py
    taper_half_width_nut: Ref[Mm] = of(setups_taper.taper_half_width_nut)
    taper_half_width_tail: Ref[Mm] = of(setups_taper.taper_half_width_tail)
    taper_centre_nut: Ref[Mm] = of(setups_taper.taper_centre_nut)
    taper_centre_tail: Ref[Mm] = of(setups_taper.taper_centre_tail)
    taper_corner_nut: Ref[Mm] = of(setups_taper.taper_corner_nut)
    taper_corner_tail: Ref[Mm] = of(setups_taper.taper_corner_tail)
    taper_edge_nut: Ref[Mm] = of(setups_taper.taper_edge_nut)
    taper_edge_tail: Ref[Mm] = of(setups_taper.taper_edge_tail)
    feed_agreeing_edge: Ref[str] = of(setups_taper.feed_agreeing_edge)
    feed_other_edge: Ref[str] = of(setups_taper.feed_other_edge)

    # top/back.py
    rear_bars: Members[BarRef, Bar] = of(top_back.rear_bars)
    rear_plate: Members[Ref[Braced], Braced] = of(top_back.rear_plate)
    rear_coarse: Members[Ref[Attempt], Attempt] = of(top_back.rear_coarse)
    rear_fine: Members[Ref[Attempt], Attempt] = of(top_back.rear_fine)
    rear_modes: Members[ModeRef, Mode] = of(top_back.rear_modes)

    # top/model.py
    braced_bars: Members[BarRef, Bar] = of(top_model.braced_bars)
    braced_blocks: Members[Ref[BlockBlock], BlockBlock] = of(top_model.braced_blocks)
    braced_pulls: Members[Ref[Pull], Pull] = of(top_model.braced_pulls)
    braced_plate: Members[Ref[Plate], Plate] = of(top_model.braced_plate)
    braced_top: Members[Ref[Braced], Braced] = of(top_model.braced_top)
    braced_coarse: Members[Ref[Attempt], Attempt] = of(top_model.braced_coarse)
    braced_fine: Members[Ref[Attempt], Attempt] = of(top_model.braced_fine)
    braced_quick: Members[Ref[Solved], Solved] = of(top_model.braced_quick)
    braced_final: Members[Ref[Solved], Solved] = of(top_model.braced_final)

    # top/modes.py
    mode_pictures: Members[Ref[ModePicture], ModePicture] = of(top_modes.mode_pictures)
    mode_list: Members[ModeRef, Mode] = of(top_modes.mode_list)
    mode_near: Members[NearPairRef, NearPair] = of(top_modes.mode_near)
    mode_with_air: Members[TwoMassRef, TwoMass] = of(top_modes.mode_with_air)
    mode_air_lower: Ref[Hertz] = of(top_modes.mode_air_lower)
    mode_air_upper: Ref[Hertz] = of(top_modes.mode_air_upper)
    mode_first_supported: Ref[Hertz] = of(top_modes.mode_first_supported)

    # top/pictures.py
    piece_top_small: Members[Ref[Any], Any] = of(top_pictures.piece_top_small)
    drawing_top_modes: DrawingRef = of(top_pictures.drawing_top_modes)
    piece_top_mode_signs: Members[DrawingRef, Drawing] = of(top_pictures.piece_top_mode_signs)
    drawing_setup_voice: DrawingRef = of(top_pictures.drawing_setup_voice)

    # top/pull.py
    pulled_turn: Ref[Radians] = of(top_pull.pulled_turn)
    pulled_turn_within: Ref[Radians] = of(top_pull.pulled_turn_within)
    pulled_spread: Ref[Ratio] = of(top_pull.pulled_spread)
    pulled_turn_least: Ref[Radians] = of(top_pull.pulled_turn_least)
    pulled_turn_most: Ref[Radians] = of(top_pull.pulled_turn_most)
    pulled_turn_supported: Ref[Radians] = of(top_pull.pulled_turn_supported)
    pulled_sink: Ref[Mm] = of(top_pull.pulled_sink)
    pulled_sink_within: Ref[Mm] = of(top_pull.pulled_sink_within)
    pulled_sink_x: Ref[Mm] = of(top_pull.pulled_sink_x)
    pulled_rise: Ref[Mm] = of(top_pull.pulled_rise)
    pulled_rise_within: Ref[Mm] = of(top_pull.pulled_rise_within)
    pulled_rise_x: Ref[Mm] = of(top_pull.pulled_rise_x)
    pulled_lift: Ref[Mm] = of(top_pull.pulled_lift)
    pulled_action: Ref[Mm] = of(top_pull.pulled_action)
    pulled_turn_crept_least: Ref[Radians] = of(top_pull.pulled_turn_crept_least)
    pulled_turn_crept_most: Ref[Radians] = of(top_pull.pulled_turn_crept_most)
    pulled_turn_dry: Ref[Radians] = of(top_pull.pulled_turn_dry)
    pulled_turn_damp: Ref[Radians] = of(top_pull.pulled_turn_damp)
    pulled_strain_top: Ref[Ratio] = of(top_pull.pulled_strain_top)
    pulled_strain_brace: Ref[Ratio] = of(top_pull.pulled_strain_brace)
    pulled_strained_brace: Ref[str] = of(top_pull.pulled_strained_brace)
    pulled_said: Ref[str] = of(top_pull.pulled_said)

    # top/pushing.py
    push_list: Members[PushComparedRef, PushCompared] = of(top_pushing.push_list)

    # top/shaving.py
    shaving_groups: Members[Members[Ref[str], str], tuple[str, ...]] = of(top_shaving.shaving_groups)
    shaving_changes: Members[Ref[Changes], Changes] = of(top_shaving.shaving_changes)
    shaving_list: Members[ShavingRef, Shaving] = of(top_shaving.shaving_list)
    shaving_step: Ref[Mm] = of(top_shaving.shaving_step)
    shaving_thickness: Members[ShavingRef, Shaving] = of(top_shaving.shaving_thickness)

    # top/sheets.py
    setup_top_under_strings: SetupRef = of(top_sheets.setup_top_under_strings)
    setup_voice_top: SetupRef = of(top_sheets.setup_voice_top)

    # top/verdicts.py
    finding_top_solved: Members[FindingRef, Finding] = of(top_verdicts.finding_top_solved)
    finding_top_turn: Members[FindingRef, Finding] = of(top_verdicts.finding_top_turn)
    finding_top_strain: Members[FindingRef, Finding] = of(top_verdicts.finding_top_strain)
    finding_top_action: Members[FindingRef, Finding] = of(top_verdicts.finding_top_action)
    finding_top_modes: Members[FindingRef, Finding] = of(top_verdicts.finding_top_modes)
    finding_tried_wood: Members[FindingRef, Finding] = of(top_verdicts.finding_tried_wood)

    # top/woods.py
    fitted_pieces: Members[TriedWoodRef, TriedWood] = of(top_woods.fitted_pieces)
    fitted_top: TimberKnownRef = of(top_woods.fitted_top)
    fitted_braces: TimberKnownRef = of(top_woods.fitted_braces)
else:

    def __getattr__(name: str) -> Ref[Any]:
        if name.startswith("_"):
            raise AttributeError(name)
        return Ref(name)
