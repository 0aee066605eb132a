//! Every public type of the library, asserted to be fit for any thread.

use std::collections::BTreeSet;
use std::fmt::Debug;

fn is_value<T: Debug + Send + Sync + 'static>() {}

/// An error says in the one form of all errors what was wrong, where, and what to do.
fn is_error<T: blockwright::explain::Explain + Clone + PartialEq + Send + Sync + 'static>() {}

/// Asserts of the types of a module what a check asks, and notes their names.
macro_rules! checked {
    ($check:ident, $found:ident, $($module:ident)::+: $($name:ident $(<$life:lifetime>)?),+) => {{
        use blockwright::$($module)::+::*;
        let module = stringify!($($module)::+).replace(' ', "");
        $(
            $check::<$name $(<$life>)?>();
            $found.insert(format!("{module}::{}", stringify!($name)));
        )+
    }};
}

fn values(found: &mut BTreeSet<String>) {
    is_value::<Box<dyn blockwright::alterations::Alteration>>();
    checked!(is_value, found, allowance: Allowances, CutLines);
    checked!(is_value, found, alterations: Abdomen, SideSeam, Change, Account, Altered, GapeSide, ArmscyeDepth, ArmscyeGape, Fullness, BackLengthIncrease, BackLengthReduction, Bust, BustGirth, Entry, DartPart, DartDivision, DartMerging, DartRelocation, DartToSeam, ForwardShoulder, FrontLength, Hinge, HipGirth, LengthAt, LengthChange, MethodChoice, MethodFigures, MethodOutcome, MethodRow, MethodTable, NecklineDepth, NecklineGape, NecklineWidth, OneSided, PanelId, Paper<'static>, Chain, Part, Promise, EarlierStep, StructureChange, Readings, Request, Seat, Underarm, ShoulderDrop, ShoulderSlope, ShoulderWidth, Sketch, Station, LocalStretch, Targeted, UpperArm, WaistGirth, BackShoulder, BackWidth, FrontWidth, WristWidth, BackNeckGape, BustDirection, BustPoint, ElbowWidth, ForearmWidth, HighHip, ShoulderBlade, SleevePitch);
    checked!(is_value, found, demonstration: CutPath, Demonstration, Opening, OpeningKind, Panel, Slash, Truing);
    checked!(is_value, found, draft: Block, Bound, Side, SleeveLength, SleeveWidth, Fit, Ease, Figure, DraftOptions, WaistPlan);
    checked!(is_value, found, drawing: Ink, Pen, Item, DrawnPath, Layer, Face, SheetPart, Placement, PatternLabels, Drawing, TextStyle, Anchor, Level, Text);
    checked!(is_value, found, explain: Explanation);
    is_error::<blockwright::explain::Several<blockwright::measurements::FileProblem>>();
    found.insert("explain::Several".to_owned());
    #[cfg(feature = "fit")]
    checked!(is_value, found, fit: Aimed, Asked, FitSettings, FitStep, Fitted, Left, LeftBecause, NearestSize, SizeDistance);
    #[cfg(feature = "form")]
    checked!(is_value, found, fit_map: Advice, Band, FitMap, Origin<'static>, RoundStation, Thread, ThreadPlace);
    #[cfg(feature = "form")]
    checked!(is_value, found, form: Armhole, Dimension, Form, Half, Landmarks, Levels, OutOfReach, Point3, Posture, PostureSign, Reproduced, Ring, ShapeParameter, Surface);
    checked!(is_value, found, geometry: Curve, Crossing, Region, Rigid, Span);
    checked!(is_value, found, grading: Align, GradedSize, Graded, Grown, Increment, Increments, NestLabels);
    checked!(is_value, found, invariants: Law, Tolerances);
    checked!(is_value, found, job: Job, BatchColumns, BatchJob, BatchRecord, BatchReport, BatchTally, Fault, PassedOver, RefusalCount, RepeatedId, OutputFile, Outcome, Output, Outputs, JobFont, PagesReport, PaperSize, PageTurn, PrintTarget, PrintOptions, RangeJob, SizeReport, IncrementReport, RangeWarning, RangeReport, RangeOutcome, JobReport, GirthReport, SeamReport, DartReport, WarningReport, AccountReport, ChangeReport, MethodsReport, MethodRowReport, MethodFiguresReport);
    #[cfg(feature = "fit")]
    checked!(is_value, found, job: FitFrom, BatchFit, FitJob, FitOutcome, FitReport, SizeChoiceReport, DifferenceReport, FitStepReport, AskedReport, LeftReport);
    #[cfg(feature = "lay")]
    checked!(is_value, found, job: LayReport, ClothReport, StretchReport, LaidReport, LayRun<'static>, LayOutcome, LayWearer);
    checked!(is_value, found, job: ComparedReport, JobFile);
    #[cfg(feature = "toile")]
    checked!(is_value, found, job: ToileCase, ToileCaseReport, ToileOutcome, ToileReport, ToileRun<'static>);
    checked!(is_value, found, progress: Progress, Ending);
    checked!(is_value, found, recipe: OwnBlock, Recipe, MadePattern, Ways);
    #[cfg(feature = "lay")]
    checked!(is_value, found, lay: Cloth, Pose, CutShape, Laid, Stretch, Lay, LayPart, LayLabels, Search);
    checked!(is_value, found, measurements: Source, Measured, Body, BodyRecord, MeasuredBlock, Range, DoubtCode, Against, Doubt, Measurement, Kind, SetReport, ReportRow, CatalogueEntry, MeasurementFile, MeasurementSet, Size, SizeTable);
    checked!(is_value, found, measurements: FileKind, Place);
    checked!(is_value, found, piece: Apexes, Pressed, Dart, EdgeRole, EdgeName, Edge, RunAlong, GirthRun, Girth, Cut, NotchKind, Notch, DrillPoint, NamedPoint, BalanceLine, Outline, Warning, PatternParts, Pattern, EdgeRef, EaseOn, Seam, PieceParts, Piece, BodySide, Measure, MeasureKind, MeasureUnit);
    checked!(is_value, found, render::demonstration: DemonstrationLabels, Step<'static>);
    checked!(is_value, found, render::dxf: Style<'static>, SizedPattern<'static>);
    checked!(is_value, found, render::fitting: Fitting<'static>);
    #[cfg(feature = "form")]
    checked!(is_value, found, render::fitting: ShownFitMap<'static>);
    #[cfg(feature = "form")]
    checked!(is_value, found, job: FitMapReport, FormReport);
    checked!(is_value, found, render::json: AdviceRecord, FitMapRecord, PatternDocument, RoundRecord, StationRecord);
    #[cfg(feature = "pdf")]
    checked!(is_value, found, render::pdf: PrintInfo, PaperFormat, Orientation, TileOptions, Tile, TilePlan, TiledParts);
    checked!(is_value, found, silhouette: Silhouette, Stance, TapeRun);
    checked!(is_value, found, signs: BodyPlace, Found, Mark, Observed, Sign, View);
    #[cfg(feature = "toile")]
    checked!(is_value, found, toile: Fabric, Gap, Heights, Hold, Loads<'static>, Patience, Picture, Pin, Plumb, Pulls, Quality, Rest, Seating, Sheet, Shown, Slack, Strain, Toile, ToileMeasures, ToileModel, ToileSettings);
    checked!(is_value, found, units: Angle, Fraction, LengthStyle, Length, Unit);
}

fn errors(found: &mut BTreeSet<String>) {
    checked!(is_error, found, allowance: AllowanceError);
    checked!(is_error, found, alterations: AlterationError, Reason, Refused, Broken, Undeclared, RequestError);
    checked!(is_error, found, demonstration: DemonstrationError);
    checked!(is_error, found, draft: DraftError);
    checked!(is_error, found, drawing: ArrangeError, DrawingError, SheetError);
    checked!(is_error, found, geometry: GeometryError);
    #[cfg(feature = "fit")]
    checked!(is_error, found, fit: FitError);
    #[cfg(feature = "form")]
    checked!(is_error, found, form: FormError);
    checked!(is_error, found, grading: GradingError, NestError);
    checked!(is_error, found, invariants: BendsBack, CapFault, DartFault, EdgeCorner, FoldFault, GirthFault, MarkFault, MouthFault, NotchFault, OutlineFault, SeamFault, PieceTooLarge, JoinCorner, NotSquareToFold, Violation, WaistDartAlone);
    checked!(is_error, found, signs: ObservedError);
    #[cfg(feature = "own-block")]
    checked!(is_error, found, render::traced: TracedError);
    checked!(is_error, found, recipe: MakeError, OwnBlockError);
    checked!(is_error, found, job: BatchColumnsError, BatchRefusal, JobError);
    checked!(is_error, found, job: ResolveError);
    #[cfg(feature = "lay")]
    checked!(is_error, found, lay: LayError);
    #[cfg(feature = "toile")]
    checked!(is_error, found, toile: ToileError);
    checked!(is_error, found, measurements: MeasurementError, MeasurementErrors, UnknownMeasurement, UnknownSize);
    checked!(is_error, found, measurements: FileCause, FileProblem, FileErrors);
    checked!(is_error, found, piece: PieceError);
    checked!(is_error, found, render::dxf: DxfError);
    checked!(is_error, found, render::json: DocumentError, ShapeFault);
    #[cfg(feature = "pdf")]
    checked!(is_error, found, render::pdf: PdfError);
    checked!(is_error, found, render::pdf::fonts: FontError);
    checked!(is_value, found, render::pdf::fonts: FontFile, Fonts);
    checked!(is_error, found, units: UnitError);
}

/// The names of all that were looked at, with their modules.
pub fn looked_at() -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    values(&mut found);
    errors(&mut found);
    found
}
