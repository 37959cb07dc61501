from workbench.circuit.ladders import weighted
from workbench.gui.network.figures import figure_texts
from workbench.pipeline.run import Pipeline
from workbench.project.document import Channel, Project
from workbench.project.edits.networks import put_networks


def test_the_figures_of_the_demo_are_those_of_the_pictures(project: Project) -> None:
    result = Pipeline().run(project)

    texts = figure_texts(result.channels.red)

    # 0.743 V / 31 steps; 1 / (sum of the legs' conductances); (3.3 - 0.743) V times that sum.
    assert texts == ("24.0 mV", "0.00 LSB", "258 Ω", "9.9 mA", "4.2 ns")


def test_a_network_of_one_bit_has_figures_too(project: Project) -> None:
    one = put_networks(project, dict.fromkeys(Channel, weighted(1, [280.0])))

    assert figure_texts(Pipeline().run(one).channels.red)[1] == "0.00 LSB"
