"""net.pt to first-guess.onnx: batch norm and calibration folded in, weights stored in half precision and widened
on loading.

    python3 export.py net.pt first-guess.onnx [calibration.pt]
"""
import sys

import numpy as np
import onnx
import torch
from onnx import helper, numpy_helper
from torch.nn.utils.fusion import fuse_conv_bn_eval

from network import ConvNormRelu, FirstGuess, Probabilities

source, target = sys.argv[1:3]
net = FirstGuess()
net.load_state_dict(torch.load(source, map_location='cpu'))
net.eval()
for m in net.modules():
    if isinstance(m, ConvNormRelu):
        m[0], m[1] = fuse_conv_bn_eval(m[0], m[1]), torch.nn.Identity()
whole = Probabilities(net, **(torch.load(sys.argv[3], map_location='cpu') if len(sys.argv) > 3 else {})).eval()
example = torch.rand(1, 3, 384, 320)
torch.onnx.export(whole, example, target, opset_version=13, input_names=['picture'], output_names=['shares'], dynamic_axes={'picture': {2: 'height', 3: 'width'}, 'shares': {2: 'height', 3: 'width'}}, **({'dynamo': False} if torch.__version__ >= '2.5' else {}))

model = onnx.load(target)
casts = []
for t in list(model.graph.initializer):
    v = numpy_helper.to_array(t)
    if v.dtype == np.float32 and v.size > 64:
        name = t.name
        t.CopyFrom(numpy_helper.from_array(v.astype(np.float16), name + '_half'))
        casts.append(helper.make_node('Cast', [name + '_half'], [name], to=onnx.TensorProto.FLOAT))
nodes = casts + list(model.graph.node)
del model.graph.node[:]
model.graph.node.extend(nodes)
model.doc_string = model.producer_version = ''
onnx.save(model, target)

import onnxruntime  # noqa: E402  (only to prove the file)

for size in ((384, 320), (384, 384), (256, 384)):
    x = torch.rand(1, 3, *size)
    got = onnxruntime.InferenceSession(target, providers=['CPUExecutionProvider']).run(None, {'picture': x.numpy()})[0]
    with torch.no_grad():
        print(size, 'largest difference to PyTorch', float(np.abs(got - whole(x).numpy()).max()))
